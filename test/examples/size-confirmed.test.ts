import { compile, type Model, type SizeTask, size, splineAngles } from "@hingeline/core";
import { expect, test } from "vitest";
import { deg, degPerUs, mm, us } from "../../packages/core/src/units/quantity.ts";
import { smallModel } from "../support/small-model.ts";

const degPerMicrosecond = 0.0915;

/** The tow plane's drop-hinged flap, in the plane. */
const towFlap: SizeTask = {
  place: { kind: "plane", base: mm(88), rise: mm(-16) },
  wanted: { up: deg(-2), down: deg(42) },
  servo: { travel: deg(45), rotation: degPerUs(degPerMicrosecond) },
  armHoles: [8, 10, 12, 14].map(mm),
  armAngles: splineAngles(24, deg(-90)),
  levelRotations: [-40, -30, -20, 0, 20, 30, 40].map(deg),
  hornHoles: [14, 17, 20.2, 23].map(mm),
  hornAngles: [-90, -75, -60, -45, -33].map(deg),
};

test("what size proposes for the tow plane's flap, the plan confirms: -2 to 42 degrees, no dead centre, no error", () => {
  const sized = size(towFlap, { evenTravel: 0 });
  if ("kind" in sized) throw new Error(sized.kind);
  const [best] = sized.proposals;
  if (best === undefined) throw new Error("size proposes nothing");
  // The servo stands at its middle, 1500 us, where the arm's own angle is as tried; level lies so far from it.
  const pulseAt = (rotation: number) => us(1500 + (best.levelRotation + rotation) / degPerMicrosecond);
  const beyond = (rotation: number) => rotation + Math.sign(rotation) * 2;
  const model: Model = smallModel({
    surfaces: {
      flap: {
        servo: {
          channel: 1,
          turns: "clockwise",
          type: { rotation: degPerUs(degPerMicrosecond) },
          bench: {
            up: pulseAt(beyond(best.rotationUp)),
            level: pulseAt(0),
            down: pulseAt(beyond(best.rotationDown)),
            guard: us(10),
          },
          linkage: best.linkage,
        },
      },
    },
    moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(-2) }, landing: { flap: deg(42) } } },
  });
  const plan = compile(model);
  expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
  const [stowed, up, down] = plan.channels[0]?.settings ?? [];
  expect(stowed?.exact.pulseUs).toBeCloseTo(pulseAt(0), 6);
  expect(up?.exact.pulseUs).toBeCloseTo(pulseAt(best.rotationUp), 6);
  expect(down?.exact.pulseUs).toBeCloseTo(pulseAt(best.rotationDown), 6);
});
