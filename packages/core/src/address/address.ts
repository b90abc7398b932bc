/** Where in a model something stands, outermost key first: `["surfaces", "flapLeft", "servo", "bench", "readings", 2]`. */
export type Address = readonly (string | number)[];

const plainName = /^[A-Za-z_$][\w$]*$/;

/** The address as text: `surfaces.flapLeft.servo.bench.readings[2]`; a name that is no identifier stands as `["my flap"]`. */
export function formatAddress(address: Address): string {
  let text = "";
  for (const step of address) {
    const isPlain = typeof step === "string" && plainName.test(step);
    if (!isPlain) text += `[${JSON.stringify(step)}]`;
    else text += text === "" ? step : `.${step}`;
  }
  return text;
}

// A quoted name is a JSON string.
const step = /\.?([A-Za-z_$][\w$]*)|\[(\d+)\]|\[("(?:[^"\\\p{Cc}]|\\(?:["\\/bfnrt]|u[\da-f]{4}))*")\]/guy;

/** The inverse of `formatAddress`; undefined where the text is no address. */
export function parseAddress(text: string): Address | undefined {
  const address: (string | number)[] = [];
  step.lastIndex = 0;
  while (step.lastIndex < text.length) {
    const match = step.exec(text);
    if (match === null) return undefined;
    const [, name, index, quoted] = match;
    if (name !== undefined) address.push(name);
    else if (index !== undefined) address.push(Number(index));
    else address.push(JSON.parse(quoted ?? "") as string);
  }
  return formatAddress(address) === text ? address : undefined;
}
