/** A plain number as part of a pattern: digits, perhaps a sign and a point; no exponent, no other base. */
export const numberPattern = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)`;

/** The number that a text is; undefined for anything but a plain one. */
export function findPlainNumber(text: string): number | undefined {
  return whole.test(text) ? Number(text) : undefined;
}

const whole = new RegExp(`^${numberPattern}$`);
