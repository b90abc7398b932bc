import { ballRodFromRule } from "../../../packages/core/src/linkage/ball-rod-from-rule.ts";
import type { Linkage } from "../../../packages/core/src/linkage/linkage.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import type { demoTables } from "./demo-readings.ts";

/** An invented servo with its linkage: what its table of demo readings was simulated from. */
export interface DemoLinkage {
  readonly table: (typeof demoTables)[number];
  readonly linkage: Linkage;
  /** The servo's own rotation and what its maker says, degrees per microsecond. */
  readonly degPerUs: number;
  readonly statedDegPerUs: number;
  /** The pulse near which the linkage stands as drawn. */
  readonly levelUs: number;
}

/** Servo axis and horn hole from the hinge, aft and up; the arm from straight down, forward positive. */
interface Row {
  readonly shaft: readonly [aft: number, starboard: number, up: number];
  readonly arm: number;
  readonly forward: number;
  readonly horn: readonly [aft: number, up: number];
  readonly rod: number;
  /** Angle by which the hinge line's starboard end lies aft. */
  readonly sweep?: number;
}

const ball = ({ shaft: [aft, starboard, up], arm, forward, horn, rod, sweep = 0 }: Row): Linkage =>
  ballRodFromRule({
    aft: mm(-aft),
    up: mm(-up),
    starboard: mm(-starboard),
    arm: mm(arm),
    armAt: deg(-90 - forward),
    horn: mm(Math.hypot(...horn)),
    hornAt: deg((Math.atan2(horn[1], horn[0]) * 180) / Math.PI),
    hingeSweep: deg(sweep),
    rod: mm(rod),
  });

const trackFlap = (
  arm: number,
  armForward: number,
  inForward: number,
  [aft, up]: readonly [number, number],
  rods: readonly [number, number],
): Linkage => ({
  kind: "chain",
  links: [
    {
      kind: "pushrod",
      arm: mm(arm),
      armAt: deg(90 + armForward),
      base: mm(aft),
      rise: mm(up),
      horn: mm(19),
      hornAt: deg(90 + inForward),
      rod: mm(rods[0]),
    },
    {
      kind: "track",
      arm: mm(34),
      armAt: deg(90 + inForward - 2),
      base: mm(156 - aft),
      rise: mm(10 - up),
      trackAt: deg(-6),
      travel: mm(34.2),
      rod: mm(rods[1]),
      cam: {
        kind: "powers",
        length: mm(34),
        terms: [
          { deflection: deg(34 * 0.12), power: 1 },
          { deflection: deg(34 * 0.88), power: 2.3 },
        ],
      },
    },
  ],
});

const demo = (
  table: DemoLinkage["table"],
  levelUs: number,
  degPerUs: number,
  linkage: Linkage,
): DemoLinkage => ({ table, linkage, degPerUs, statedDegPerUs: 0.09 * Math.sign(degPerUs), levelUs });

/** The tow plane's left flap. */
export const towFlap = ball({
  shaft: [-88, 7, 16],
  arm: 10,
  forward: -16,
  horn: [17, -11],
  rod: 103.9,
  sweep: 4,
});

/** Linkages of four invented models. */
export const demoLinkages: readonly DemoLinkage[] = [
  demo("tow plane, left flap", 1859, -0.0915, towFlap),
  demo(
    "tow plane, right flap",
    1154,
    0.0908,
    ball({ shaft: [-88, -7, 15.5], arm: 10.2, forward: -17, horn: [17, -11.3], rod: 103.7, sweep: -4 }),
  ),
  demo(
    "tow plane, left aileron",
    1522,
    -0.0905,
    ball({ shaft: [-70, 0, 5], arm: 13, forward: 3, horn: [1, -17], rod: 72.2, sweep: 1 }),
  ),
  demo(
    "tow plane, right aileron",
    1486,
    0.0912,
    ball({ shaft: [-70, 0, 5], arm: 13, forward: 2, horn: [1, -17], rod: 72, sweep: -1 }),
  ),
  demo(
    "sailplane, left aileron",
    1548,
    -0.09,
    ball({ shaft: [-74, 0, -4], arm: 9, forward: 6, horn: [2, -11], rod: 77 }),
  ),
  demo(
    "sailplane, right aileron",
    1461,
    0.091,
    ball({ shaft: [-74, 0, -4], arm: 9, forward: 4, horn: [2, -11.2], rod: 76.6 }),
  ),
  demo(
    "sailplane, left flap",
    1893,
    -0.092,
    ball({ shaft: [-66, 0, -3], arm: 12.5, forward: -38, horn: [3, -11], rod: 61.3 }),
  ),
  demo(
    "sailplane, right flap",
    1120,
    0.0925,
    ball({ shaft: [-66, 0, -3], arm: 12.5, forward: -36, horn: [3, -11], rod: 61.7 }),
  ),
  demo("twin, left flap", 1128, 0.0915, trackFlap(17, 40, 34, [118, -20], [119.6, 56])),
  demo("twin, right flap", 1876, -0.0921, trackFlap(16.8, 41, 34.5, [118.4, -20.2], [119.9, 55.9])),
  demo(
    "delta, left elevon",
    1537,
    -0.0905,
    ball({ shaft: [-58, 0, 2], arm: 11, forward: 4, horn: [1, -14], rod: 60, sweep: -12 }),
  ),
  demo(
    "delta, right elevon",
    1468,
    0.0898,
    ball({ shaft: [-58, 0, 2], arm: 11, forward: 3, horn: [1, -14], rod: 59.8, sweep: 12 }),
  ),
];
