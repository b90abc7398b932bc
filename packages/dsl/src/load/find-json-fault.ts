/** The first place at which a text is not JSON: line and column from 1, and what is wrong there. */
export interface JsonFault {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

type Wanted = "value" | "valueOrEnd" | "key" | "keyOrEnd" | "colon" | "commaOrEnd" | "nothing";

const string = /"[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})[ !#-[\]-\uffff]*)*"/;
const literal = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.])/;
const token = new RegExp(
  `[\\t\\n\\r ]*(?:(?<mark>[[\\]{}:,])|(?<string>${string.source})|(?<literal>${literal.source}))`,
  "y",
);

const phrases: Readonly<Record<Wanted, string>> = {
  value: "a value",
  valueOrEnd: 'a value or "]"',
  key: "a key in double quotes",
  keyOrEnd: 'a key in double quotes or "}"',
  colon: '":"',
  commaOrEnd: '"," or the closing bracket',
  nothing: "the end of the text",
};

/**
 * The first fault of `json` as JSON (RFC 8259), undefined where it has none. A key that stands twice in one object is a fault too
 * (RFC 7493): a parser would drop the first in silence. Node's own messages have no line and differ between versions.
 */
export function findJsonFault(json: string): JsonFault | undefined {
  const open: (Set<string> | undefined)[] = [];
  let wanted: Wanted = "value";
  token.lastIndex = 0;
  for (;;) {
    const from = token.lastIndex;
    const match = token.exec(json);
    const { mark, string: text, literal: word } = match?.groups ?? {};
    const start =
      match === null ? skipSpace(json, from) : token.lastIndex - (mark ?? text ?? word ?? "").length;
    if (match === null && start === json.length && wanted === "nothing") return undefined;
    const keys = open.at(-1);
    const next: Wanted | undefined =
      match === null ? undefined : follow(wanted, mark, text !== undefined, open);
    if (next === undefined) return faultAt(json, start, `expected ${phrases[wanted]}`);
    if (next === "colon" && text !== undefined && keys !== undefined) {
      const key = JSON.parse(text) as string;
      if (keys.has(key)) return faultAt(json, start, `the key ${text} stands twice`);
      keys.add(key);
    }
    wanted = next;
  }
}

/** What is wanted after a token, `open` brought up to date; undefined where the token is not what was wanted. */
function follow(
  wanted: Wanted,
  mark: string | undefined,
  isString: boolean,
  open: (Set<string> | undefined)[],
): Wanted | undefined {
  const after = (): Wanted => (open.length === 0 ? "nothing" : "commaOrEnd");
  const inObject = open.at(-1) !== undefined;
  switch (wanted) {
    case "value":
    case "valueOrEnd":
      if (mark === undefined) return after();
      if (mark === "{" || mark === "[") {
        open.push(mark === "{" ? new Set() : undefined);
        return mark === "{" ? "keyOrEnd" : "valueOrEnd";
      }
      return close(mark === "]" && wanted === "valueOrEnd", open, after);
    case "key":
    case "keyOrEnd":
      return isString ? "colon" : close(mark === "}" && wanted === "keyOrEnd", open, after);
    case "colon":
      return mark === ":" ? "value" : undefined;
    case "commaOrEnd":
      if (mark === ",") return inObject ? "key" : "value";
      return close(mark === (inObject ? "}" : "]"), open, after);
    case "nothing":
      return undefined;
  }
}

function close(closes: boolean, open: unknown[], after: () => Wanted): Wanted | undefined {
  if (!closes) return undefined;
  open.pop();
  return after();
}

function skipSpace(text: string, from: number): number {
  const space = /[\t\n\r ]*/y;
  space.lastIndex = from;
  space.test(text);
  return space.lastIndex;
}

function faultAt(text: string, offset: number, expected: string): JsonFault {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/);
  const found = offset >= text.length ? ", but the text ends" : "";
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1, message: expected + found };
}
