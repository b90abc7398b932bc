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

test("everything that is measured may be left out", () => {
  const bare = { format: "hingeline/as-built", version: 1, model: "", plan: "3f2c91ab", channels: [] };
  for (const channels of [[], [{ channel: 5 }], [{ channel: 5, powerUpUs: "none", settings: [] }]]) {
    expect(validate({ ...bare, channels })).toBe(true);
    expect(parseAsBuilt({ ...bare, channels })).toHaveProperty("asBuilt");
  }
});
