import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { parsePlan } from "../../../packages/core/src/plan/parse-plan.ts";
import { planJsonSchema } from "../../../packages/core/src/plan/plan-json-schema.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { smallModel } from "../../support/small-model.ts";

const validate = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(
  planJsonSchema(),
);

test("the published JSON Schema (2020-12) accepts every plan in an independent validator", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      const plan = JSON.parse(JSON.stringify(compile(model)));
      expect(validate(plan), JSON.stringify(validate.errors)).toBe(true);
      expect(parsePlan(plan)).toEqual({ plan });
    }),
  );
});

test("schema and parser refuse the same spoilt plans", () => {
  const good = JSON.parse(JSON.stringify(compile(smallModel())));
  const spoilt = [
    { ...good, version: 2 },
    { ...good, extra: 1 },
    { ...good, channels: [{ ...good.channels[0], direction: "up" }] },
    { ...good, channels: [{ ...good.channels[0], safeUs: [1, 2, 3] }] },
    { ...good, radio: { ...good.radio, centreUs: "1500" } },
  ];
  for (const plan of spoilt) {
    expect(validate(plan)).toBe(false);
    expect(parsePlan(plan)).toHaveProperty("problem");
  }
  expect(parsePlan({ ...good, radio: { ...good.radio, centreUs: "1500" } })).toEqual({
    problem: expect.stringContaining("radio.centreUs"),
  });
});

describe("a plan that contradicts itself is none", () => {
  const good = JSON.parse(JSON.stringify(compile(smallModel())));
  const [channel] = good.channels;
  const { enter } = channel.settings[2];
  const withChannel = (part: object) => ({ ...good, channels: [{ ...channel, ...part }] });
  const withEnter = (part: object) =>
    withChannel({
      settings: [...channel.settings.slice(0, 2), { ...channel.settings[2], enter: { ...enter, ...part } }],
    });
  const { low, high } = channel.limits;

  test.each([
    ["limits changed over", withChannel({ limits: { low: high, high: low } }), "channels[0].limits"],
    ["safe pulses changed over", withChannel({ safeUs: channel.safeUs.toReversed() }), "channels[0].safeUs"],
    ["a limit outside the safe pulses", withChannel({ safeUs: [1600, 1601] }), "channels[0].limits.low"],
    ["a channel twice", { ...good, channels: [channel, channel] }, "channels[1].channel"],
    ["a channel that no receiver has", withChannel({ channel: 0 }), "channel 0 (channels[0].channel)"],
    [
      "a percent that is not its pulse",
      withEnter({ percent: enter.percent + 1 }),
      "channels[0].settings[2].enter",
    ],
    ["a value past the limits", withEnter({ percent: 180, pulseUs: 2400 }), "channels[0].settings[2].enter"],
    [
      "a detent and a stick's end at once",
      withChannel({ settings: [{ ...channel.settings[0], stick: 1 }] }),
      "channels[0].settings[0]",
    ],
    [
      "neither of the two",
      withChannel({ settings: [{ ...channel.settings[0], detent: undefined }] }),
      "channels[0].settings[0]",
    ],
  ])("%s", (_, plan, at) => {
    expect(parsePlan(JSON.parse(JSON.stringify(plan)))).toEqual({
      problem: expect.stringContaining(`${at}`),
    });
  });

  test("but one with an error holds what is wrong with it", () => {
    const error = { code: "x", severity: "error", at: "", message: "", do: "", numbers: {} };
    expect(parsePlan({ ...withEnter({ percent: 180, pulseUs: 2400 }), findings: [error] })).toHaveProperty(
      "plan",
    );
  });
});
