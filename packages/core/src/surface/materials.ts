/** What rods and structures are made of. */
export type Material = keyof typeof MATERIALS;

/**
 * Young's modulus along the length, and growth with temperature. Usual values, all from memory: pultruded rods and wood
 * vary by a fifth and more.
 */
export const MATERIALS = {
  steel: { modulusGPa: 200, expansionPerK: 12e-6 },
  aluminium: { modulusGPa: 70, expansionPerK: 23e-6 },
  titanium: { modulusGPa: 110, expansionPerK: 8.6e-6 },
  brass: { modulusGPa: 100, expansionPerK: 19e-6 },
  carbon: { modulusGPa: 120, expansionPerK: 0.5e-6 },
  glass: { modulusGPa: 40, expansionPerK: 7e-6 },
  hardwood: { modulusGPa: 12, expansionPerK: 5e-6 },
} as const satisfies Record<string, { readonly modulusGPa: number; readonly expansionPerK: number }>;
