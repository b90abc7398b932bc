/**
 * Horn angle of a planar four-bar, degrees, open branch, from crank, coupler, rocker, ground and crank angle; undefined
 * where it cannot be assembled. Source: R. L. Norton, Design of Machinery, position analysis.
 */
export function hornAngleDeg([a = NaN, b = NaN, c = NaN, d = NaN, crankDeg = NaN]: readonly number[]) {
  const [cos, sin] = [Math.cos((crankDeg * Math.PI) / 180), Math.sin((crankDeg * Math.PI) / 180)];
  const [k1, k2, k3] = [d / a, d / c, (a ** 2 - b ** 2 + c ** 2 + d ** 2) / (2 * a * c)];
  const [qa, qb, qc] = [cos - k1 - k2 * cos + k3, -2 * sin, k1 - (k2 + 1) * cos + k3];
  const root = qb ** 2 - 4 * qa * qc;
  return root < 0 ? undefined : (2 * Math.atan((-qb - Math.sqrt(root)) / (2 * qa)) * 180) / Math.PI;
}

/** Lengths and crank angle of a reference case as inputs, in the order of `hornAngleDeg`. */
export function fourBarInputs<Key extends string>(
  row: Readonly<Record<Key, number>> & { readonly u: Readonly<Record<Key, number>> },
  keys: readonly Key[],
) {
  return keys.map((name) => ({ name, value: row[name], standard: row.u[name] }));
}

/** The inputs of `hornAngleDeg` as the reference names them. */
export const FOUR_BAR_KEYS = ["a", "b", "c", "d", "theta2_deg"] as const;
