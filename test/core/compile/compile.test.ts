import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile, type Model, us } from "../../../packages/core/src/index.ts";
import { parseModel } from "../../../packages/core/src/schema.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { smallModel, smallServo } from "../../support/small-model.ts";

describe("a model in code that no parser has looked at", () => {
  const { radio } = smallModel();
  const onBench = (bench: object) =>
    smallModel({ surfaces: { flap: { servo: smallServo({ bench: { ...smallServo().bench, ...bench } }) } } });
  const cases: readonly (readonly [string, Model, string])[] = [
    [
      "a guard below 0, which would let it past the stops",
      onBench({ guard: us(-50) }),
      "surfaces.flap.servo.bench.guard",
    ],
    [
      "a channel 0",
      smallModel({ surfaces: { flap: { servo: smallServo({ channel: 0 }) } } }),
      "surfaces.flap.servo.channel",
    ],
    ["a step of 0", { ...smallModel(), radio: { ...radio, step: 0 as typeof radio.step } }, "radio.step"],
    ["100 percent of no pulse", { ...smallModel(), radio: { ...radio, per100: us(0) } }, "radio.per100"],
    ["points without end", { ...smallModel(), radio: { ...radio, curvePoints: 1e5 } }, "radio.curvePoints"],
  ];

  test.each(cases)("%s: nothing to enter, and an error that names it", (_, model, at) => {
    const plan = compile(model);
    expect(plan.findings.map((one) => [one.code, one.severity, one.at])).toEqual([
      ["model-malformed", "error", at],
    ]);
    expect(plan).toMatchObject({ channels: [], matches: [], gangs: [], procedure: [] });
  });

  test("with one part out of its range never has more to enter than a parser lets through", () => {
    fc.assert(
      fc.property(arbitraryModel, fc.integer({ min: -500, max: -1 }), (model, guard) => {
        const surfaces = Object.fromEntries(
          Object.entries(model.surfaces).map(([name, { servo, ...rest }]) => [
            name,
            servo === undefined
              ? rest
              : { ...rest, servo: { ...servo, bench: { ...servo.bench, guard: us(guard) } } },
          ]),
        );
        const changed = { ...model, surfaces } as Model;
        fc.pre("problems" in parseModel(changed));
        expect(compile(changed).channels).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
});
