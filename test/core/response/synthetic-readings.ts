import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Linkage } from "../../../packages/core/src/linkage/linkage.ts";
import type { FitPoint } from "../../../packages/core/src/response/fit-shape.ts";
import type { Random } from "../../../packages/core/src/uncertainty/random.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";

export interface Bench {
  readonly levelUs: number;
  readonly degPerUs: number;
  readonly rotationZeroDeg?: number;
  readonly deflectionZeroDeg?: number;
  readonly rotationsDeg: readonly number[];
  /** Standard scatter of the readings, and where it comes from. */
  readonly scatterDeg?: number;
  readonly random?: Random;
}

/** What a builder would read of a linkage at given rotations. */
export function readBench(linkage: Linkage, bench: Bench): readonly FitPoint[] {
  const made = drive(linkage);
  if ("kind" in made) throw new Error(made.kind);
  const { levelUs, degPerUs, rotationZeroDeg = 0, deflectionZeroDeg = 0, scatterDeg = 0, random } = bench;
  return bench.rotationsDeg.map((rotationDeg) => {
    const deflection = made.deflectionAt(deg(rotationDeg + rotationZeroDeg));
    if (deflection === undefined) throw new Error(`out of reach at ${rotationDeg}`);
    const scatter = random === undefined ? 0 : scatterDeg * normal(random);
    return {
      pulseUs: levelUs + rotationDeg / degPerUs,
      deflectionDeg: deflection + deflectionZeroDeg + scatter,
    };
  });
}

/** A standard normal draw. Source: G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29 (1958) 610-611. */
export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
