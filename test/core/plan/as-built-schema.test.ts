import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { asBuiltJsonSchema } from "../../../packages/core/src/plan/as-built-json-schema.ts";
import { asBuiltTemplate } from "../../../packages/core/src/plan/as-built-template.ts";
import { parseAsBuilt } from "../../../packages/core/src/plan/parse-as-built.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { smallModel } from "../../support/small-model.ts";

const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(asBuiltJsonSchema());

test("the published JSON Schema (2020-12) accepts the template of every plan in an independent validator", () => {
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      const template = asBuiltTemplate(compile(model));
      const data: unknown = JSON.parse(JSON.stringify(template));
      expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
      expect(parseAsBuilt(data)).toEqual({ asBuilt: template });
    }),
    { numRuns: 30 },
  );
});

test("schema and parser refuse the same spoilt files", () => {
  const good = JSON.parse(JSON.stringify(asBuiltTemplate(compile(smallModel()))));
  const [channel] = good.channels;
  const spoilt = [
    { ...good, version: 2 },
    { ...good, extra: 1 },
    { ...good, plan: "3f2c" },
    { ...good, plan: "3F2C91AB" },
    { ...good, channels: [{ ...channel, neutralUs: null }] },
    { ...good, channels: [{ ...channel, neutralUs: "" }] },
    { ...good, channels: [{ ...channel, failsafeUs: "none" }] },
    { ...good, channels: [{ ...channel, channel: 1.5 }] },
    { ...good, instruments: { pulseUs: -1 } },
  ];
  for (const asBuilt of spoilt) {
    expect(validate(asBuilt)).toBe(false);
    expect(parseAsBuilt(asBuilt)).toHaveProperty("problem");
  }
  expect(parseAsBuilt({ ...good, channels: [{ ...channel, neutralUs: null }] })).toEqual({
    problem: expect.stringContaining("channels[0].neutralUs"),
  });
});

test("what is wrong with a file is said in words, with the place in the file behind them", () => {
  const good = JSON.parse(JSON.stringify(asBuiltTemplate(compile(smallModel()))));
  const [channel] = good.channels;
  const [setting, ...settings] = channel.settings;
  const said = (spoilt: object) => {
    const parsed = parseAsBuilt({ ...good, channels: [{ ...channel, ...spoilt }] });
    return "problem" in parsed ? parsed.problem : "";
  };
  expect(said({ settings: [{ ...setting, pulseUs: "1728" }, ...settings] })).toBe(
    'channel 1, lever at stowed (channels[0].settings[0].pulseUs): expected a number or "not measured", got the text "1728"; write it without quotes.',
  );
  expect(said({ powerUpUs: "off" })).toBe(
    'channel 1 (channels[0].powerUpUs): expected a number, "none" or "not measured", got the text "off".',
  );
  expect(said({ neutralUs: null })).toBe(
    'channel 1 (channels[0].neutralUs): expected a number or "not measured", got null.',
  );
  expect(said({ channel: "five" })).toBe('channels[0].channel: expected a number, got the text "five".');
  for (const data of [undefined, null, [], "text", 7]) {
    const parsed = parseAsBuilt(data);
    expect("problem" in parsed && parsed.problem).toMatch(/^the document: expected an object, got .*\.$/);
  }
});

test("everything that is measured may be left out", () => {
  const bare = { format: "hingeline/as-built", version: 1, model: "", plan: "3f2c91ab", channels: [] };
  for (const channels of [[], [{ channel: 5 }], [{ channel: 5, powerUpUs: "none", settings: [] }]]) {
    expect(validate({ ...bare, channels })).toBe(true);
    expect(parseAsBuilt({ ...bare, channels })).toHaveProperty("asBuilt");
  }
});
