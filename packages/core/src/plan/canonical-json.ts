/** Plain JSON data: what `canonicalJson` takes. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * The canonical form of RFC 8785: keys sorted by UTF-16 code units, no white space, ECMAScript numbers. Keys whose value is
 * undefined are left out. Throws TypeError for what JSON cannot hold: NaN, infinities, functions, class instances, lone surrogates.
 */
export function canonicalJson(value: unknown): string {
  return write(value, "");
}

function write(value: unknown, at: string): string {
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new TypeError(`${at || "value"} is ${value}, which JSON cannot hold`);
    return JSON.stringify(value);
  }
  if (typeof value === "string") return quote(value, at);
  if (Array.isArray(value))
    return `[${value.map((item, index) => write(item, `${at}[${index}]`)).join(",")}]`;
  if (typeof value === "object" && isPlain(value)) {
    const members = Object.entries(value)
      .filter(([, item]) => item !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, item]) => `${quote(key, at)}:${write(item, `${at}.${key}`)}`);
    return `{${members.join(",")}}`;
  }
  throw new TypeError(`${at || "value"} is no plain JSON data`);
}

function quote(text: string, at: string): string {
  if (/[\uD800-\uDFFF]/u.test(text)) throw new TypeError(`${at || "value"} holds a lone surrogate`);
  return JSON.stringify(text);
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
