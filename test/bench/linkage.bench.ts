import { isLinkageProblem } from "../../packages/core/src/linkage/drive.ts";
import { drive } from "../../packages/core/src/linkage/drives.ts";
import { deg, mm } from "../../packages/core/src/units/quantity.ts";
import { inputs, measure, over, type Row } from "./row.ts";

const pushrod = {
  kind: "pushrod",
  arm: mm(11),
  horn: mm(13),
  base: mm(48),
  rise: mm(-2),
  armAt: deg(95),
  hornAt: deg(100),
} as const;
const toRad = Math.PI / 180;
const rodSquared = squaredDistance(pushrod.armAt * toRad, pushrod.hornAt * toRad);

/** One pushrod solve, beside the trigonometry that it cannot do without and beside bisection on its length. */
export async function rows(): Promise<readonly Row[]> {
  const made = drive(pushrod);
  if (isLinkageProblem(made)) throw new Error(made.kind);
  const rotations = inputs(-40, 40);
  for (const rotation of rotations)
    if (Math.abs((made.deflectionAt(deg(rotation)) ?? Number.NaN) - bisection(rotation)) > 1e-9)
      throw new Error(`the two disagree at ${rotation} degrees`);
  const took = await measure(
    {
      solve: over(rotations, (rotation) => made.deflectionAt(rotation as never) ?? Number.NaN),
      trigonometry: over(rotations, trigonometryAlone),
      bisection: over(rotations, bisection),
    },
    { calls: rotations.length },
  );
  return [
    {
      what: "pushrod solve",
      tookNs: took.solve,
      beside: "its trigonometry alone",
      besideNs: took.trigonometry,
      aim: "<= 2",
    },
    {
      what: "pushrod solve",
      tookNs: took.solve,
      beside: "bisection on the length",
      besideNs: took.bisection,
      aim: "<= 1/20",
    },
  ];
}

/** The calls that one solve cannot do without: cosine and sine in, square root and arc tangent out. */
function trigonometryAlone(rotationDeg: number): number {
  const c = Math.cos(rotationDeg * toRad);
  const s = Math.sin(rotationDeg * toRad);
  return Math.atan2(c + Math.sqrt(1.5 + s), s + 2) / toRad;
}

/** The length equation of the same pushrod, halved until two neighbouring doubles are left. */
function bisection(rotationDeg: number): number {
  const armRad = (pushrod.armAt - rotationDeg) * toRad;
  const excess = (deflectionRad: number) =>
    squaredDistance(armRad, pushrod.hornAt * toRad - deflectionRad) - rodSquared;
  let low = -1.2;
  let high = 1.2;
  const signAtLow = Math.sign(excess(low));
  for (;;) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) return low / toRad;
    if (Math.sign(excess(middle)) === signAtLow) low = middle;
    else high = middle;
  }
}

function squaredDistance(armRad: number, hornRad: number): number {
  const x = pushrod.base + pushrod.horn * Math.cos(hornRad) - pushrod.arm * Math.cos(armRad);
  const z = pushrod.rise + pushrod.horn * Math.sin(hornRad) - pushrod.arm * Math.sin(armRad);
  return x * x + z * z;
}
