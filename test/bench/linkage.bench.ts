// One solve against its trigonometry and against root finding. Run: npm run bench -- linkage
// Prints ratios within one run; times themselves depend on the machine. Bundled, because a loader that keeps every
// import behind a getter measures its getters.
import { isProblem } from "../../packages/core/src/linkage/drive.ts";
import { drive } from "../../packages/core/src/linkage/drives.ts";
import { deg, mm } from "../../packages/core/src/units/quantity.ts";

const pushrod = {
  kind: "pushrod",
  arm: mm(11),
  horn: mm(13),
  base: mm(48),
  rise: mm(-2),
  armAt: deg(95),
  hornAt: deg(100),
} as const;
const made = drive(pushrod);
if (isProblem(made)) throw new Error(made.kind);

const rotations = Float64Array.from({ length: 1024 }, (_, i) => -40 + (80 * i) / 1023);
const toRad = Math.PI / 180;

/** The calls that one solve cannot do without: cosine and sine in, square root and arc tangent out. */
function trigonometryAlone(rotationDeg: number): number {
  const c = Math.cos(rotationDeg * toRad);
  const s = Math.sin(rotationDeg * toRad);
  return Math.atan2(c + Math.sqrt(1.5 + s), s + 2) / toRad;
}

/** The length equation of the same pushrod, halved until two neighbouring doubles are left. */
function bisection(rotationDeg: number): number {
  const armRad = (pushrod.armAt - rotationDeg) * toRad;
  const pinX = pushrod.arm * Math.cos(armRad);
  const pinZ = pushrod.arm * Math.sin(armRad);
  const excess = (deflectionRad: number) => {
    const hornRad = pushrod.hornAt * toRad - deflectionRad;
    const x = pushrod.base + pushrod.horn * Math.cos(hornRad) - pinX;
    const z = pushrod.rise + pushrod.horn * Math.sin(hornRad) - pinZ;
    return x * x + z * z - rodSquared;
  };
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

const rodSquared = (() => {
  const arm = pushrod.armAt * toRad;
  const horn = pushrod.hornAt * toRad;
  const x = pushrod.base + pushrod.horn * Math.cos(horn) - pushrod.arm * Math.cos(arm);
  const z = pushrod.rise + pushrod.horn * Math.sin(horn) - pushrod.arm * Math.sin(arm);
  return x * x + z * z;
})();

/** Best of several rounds, nanoseconds a call. */
function nanoseconds(solve: (rotationDeg: number) => number): number {
  let best = Number.POSITIVE_INFINITY;
  let sum = 0;
  for (let round = 0; round < 40; round++) {
    const start = performance.now();
    for (let pass = 0; pass < 20; pass++) for (const rotation of rotations) sum += solve(rotation);
    best = Math.min(best, ((performance.now() - start) * 1e6) / (20 * rotations.length));
  }
  if (!Number.isFinite(sum)) throw new Error("not finite");
  return best;
}

const worst = Math.max(
  ...rotations.map((rotation) =>
    Math.abs((made.deflectionAt(deg(rotation)) ?? Number.NaN) - bisection(rotation)),
  ),
);
const solve = nanoseconds((rotation) => made.deflectionAt(rotation as never) ?? 0);
const alone = nanoseconds(trigonometryAlone);
const halving = nanoseconds(bisection);
const build = nanoseconds((rotation) => {
  if (rotation > -39.5) return 0;
  return isProblem(drive(pushrod)) ? 0 : 1;
});
const builtOf = rotations.filter((rotation) => rotation <= -39.5).length / rotations.length;

console.table({
  "solve / its trigonometry alone": { ratio: solve / alone, aim: "at most 2" },
  "bisection / solve": { ratio: halving / solve, aim: "at least 20" },
  "making the drive / solve": { ratio: build / builtOf / solve, aim: "" },
});
console.table({
  "solve, ns": solve,
  "trigonometry alone, ns": alone,
  "bisection, ns": halving,
  "worst difference of the two, degrees": worst,
});
