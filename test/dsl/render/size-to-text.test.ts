import { deg, degPerUs, mm, type Proposal, type SizeTask, size } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { type SizeFacts, sizeToText } from "../../../packages/dsl/src/render/size-to-text.ts";

const task: SizeTask = {
  place: { kind: "plane", base: mm(-70.25), rise: mm(4) },
  wanted: { up: deg(-20), down: deg(14) },
  servo: { travel: deg(40), rotation: degPerUs(0.0915) },
  armHoles: [mm(11)],
  armAngles: [deg(-97.5), deg(90)],
  hornHoles: [mm(15)],
  hornAngles: [deg(-82.5)],
  levelRotations: [deg(-7.5)],
};

/** Two round numbers, so that the cells can be told by eye. */
const proposal: Proposal = {
  linkage: {
    kind: "pushrod",
    arm: mm(11),
    horn: mm(15),
    base: mm(-70.25),
    rise: mm(4),
    armAt: deg(-90),
    hornAt: deg(-82.5),
  },
  arm: mm(11),
  armAngle: deg(-97.5),
  armAt: deg(-90),
  levelRotation: deg(-7.5),
  horn: mm(15),
  hornAt: deg(-82.5),
  rod: mm(70.04),
  rotationUp: deg(-30),
  rotationDown: deg(20.26),
  ratioUp: 0.7,
  ratioLevel: 0.75,
  ratioDown: 0.8,
  worstRatio: 0.8,
  worstSine: 0.5,
  steepest: degPerUs(0.0732),
  unevenness: 1 / 3,
  score: 1,
};

const facts: SizeFacts = {
  task,
  result: {
    proposals: [proposal],
    tried: 1500,
    fitting: 2,
    rejected: { cannotBeMade: 1, notReached: 20, travelTooShort: 300, nearDeadCentre: 1177 },
  },
  leastAngleDeg: 20,
  evenTravel: 0.75,
};

describe("sizeToText", () => {
  test("shows each number in its column, and every reason with its count", () => {
    expect(sizeToText(facts)).toMatchInlineSnapshot(`
      "Wanted     20 deg up and 14 deg down
      Hinge      70.25 mm ahead of the shaft, 4 mm above it
      Servo      turns 40 deg to either side of its middle, 0.0915 deg a microsecond
      Tried      1500 combinations, of which 2 would do; the best 1 shown
      Left out   each for the first thing wrong: 1 stand at a dead centre at level; 20
                 never reach a wanted deflection; 300 need more servo travel than
                 there is; 1177 bring the rod nearer than 20 deg to one line with arm
                 or horn

                 ARM     at  level  HORN     at   rod   up  down  torque  ranks  angle
                  mm    deg    deg    mm    deg    mm  deg   deg       x      x    deg
        1         11  -97.5   -7.5    15  -82.5  70.0   30    20    1.25   1.00     30

      Order      by what it ranks at, the most first
      at         from aft (0) through up (90): the arm with the servo at its middle,
                 the horn with the surface level
      level      what the servo is turned from its middle where the surface is level
      rod        pin to pin, what fits at level
      up, down   what the servo turns from level to the wanted deflections
      torque     at the surface for one at the servo, where it is least
      ranks      torque / (1 + 0.75 u), u being 0 where the servo turns as much up as
                 down and 1 where all is on one side
      angle      least between the rod and arm or horn, on all of the way

      Declare    the first as pushrod({ arm: mm(11), horn: mm(15), base: mm(-70.25),
                 rise: mm(4), armAt: deg(-90), hornAt: deg(-82.5) })
      Fineness   one microsecond moves its surface by 0.073 deg at most

      - An estimate of geometry alone, in one plane: it knows no flex, no play, no
        widths, and nothing that is in the way.
      - The more torque, the slower the surface, and the larger the forces in rod and
        horn.
      - Measure what was built with a servo tester before a plan is made for it.
      "
    `);
  });

  test("fits into 80 columns, however many digits the holes and angles have", () => {
    const many: Proposal = {
      ...proposal,
      arm: mm(12.75),
      armAngle: deg(-172.8),
      levelRotation: deg(-42.5),
      horn: mm(20.25),
      hornAt: deg(-102.5),
      rod: mm(999.9),
      rotationDown: deg(119.9),
    };
    const proposals = Array.from({ length: 100 }, () => many);
    const lines = sizeToText({ ...facts, result: { ...facts.result, proposals } }).split("\n");
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  test("leaves no reason with a count of 0, and no column for a level that can only be at the middle", () => {
    const { levelRotations: _, ...upright } = task;
    const result = size(upright);
    if ("kind" in result) throw new Error(result.kind);
    const text = sizeToText({ ...facts, task: upright, result });
    expect(text).not.toContain(" 0 never");
    expect(text).not.toContain("  level  ");
  });

  test("colours the holes and moves nothing by it", () => {
    const coloured = sizeToText(facts, { colour: true });
    expect(coloured).toContain("\u001b[1m");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape of SGR is what is looked for.
    expect(coloured.replaceAll(/\u001b\[\d+m/g, "")).toBe(sizeToText(facts));
  });
});
