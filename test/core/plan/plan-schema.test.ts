import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
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
