import { type Deg, deg } from "../units/quantity.ts";

/**
 * The angles that an arm can take on a toothed shaft, one a tooth, from one of them on; 24 teeth are 15 degrees apart. From
 * -180 up to but not 180. `teeth` is a whole number of 1 or more; anything else throws RangeError, because it comes from code.
 */
export function splineAngles(teeth: number, oneOfThem: Deg): readonly Deg[] {
  if (!Number.isSafeInteger(teeth) || teeth < 1)
    throw new RangeError(`splineAngles(${teeth}): expected teeth`);
  const stepDeg = 360 / teeth;
  const first = oneOfThem - stepDeg * Math.floor((oneOfThem + 180) / stepDeg);
  return Array.from({ length: teeth }, (_, i) => deg(first + i * stepDeg));
}
