/**
 * A finite number as a literal of TypeScript, in the fewest digits; with as many decimals as the literal that it replaces where
 * that one ends in zeros ("1.50"), because then the builder shows all decimals.
 */
export function writeNumber(value: number, replaced = ""): string {
  const decimals = /\.(\d*0|)$/.exec(replaced)?.[1]?.length ?? 0;
  const padded = value.toFixed(decimals);
  // -0 is written 0.
  return decimals > 0 && Number(padded) === value ? padded : String(value);
}
