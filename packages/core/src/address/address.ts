/** Where in a model something stands, outermost key first: `["surfaces", "flapLeft", "servo", "bench", "readings", 2]`. */
export type Address = readonly (string | number)[];

const plainName = /^[A-Za-z_$][\w$]*$/;

/** The address as text: `surfaces.flapLeft.servo.bench.readings[2]`; a name that is no identifier stands as `["my flap"]`. */
export function formatAddress(address: Address): string {
  let text = "";
  for (const step of address) {
    if (typeof step === "number") text += `[${step}]`;
    else if (!plainName.test(step)) text += `[${JSON.stringify(step)}]`;
    else text += text === "" ? step : `.${step}`;
  }
  return text;
}

const step = /\.?([A-Za-z_$][\w$]*)|\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]/gy;

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
    else if (quoted !== undefined) address.push(JSON.parse(quoted) as string);
  }
  return address;
}
