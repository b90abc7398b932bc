/** A number with its unit's brand; undefined stays undefined. */
export function branded<Q>(brand: (value: number) => Q, value: number | undefined): Q | undefined {
  return value === undefined ? undefined : brand(value);
}
