import canonicalize from "canonicalize";
import { expect, test } from "vitest";
import { planToJson } from "../../../packages/dsl/src/render/plan-to-json.ts";
import { fullPlan } from "../../support/sample-plan.ts";

test("planToJson is canonical JSON, as an independent RFC 8785 package writes it, and a line feed", () => {
  expect(planToJson(fullPlan)).toBe(`${canonicalize(fullPlan)}\n`);
});

test("planToJson pretty is the same content, indented by two spaces, in the same order of keys", () => {
  const pretty = planToJson(fullPlan, { pretty: true });
  expect(JSON.stringify(JSON.parse(pretty))).toBe(planToJson(fullPlan).trimEnd());
  expect(pretty.split("\n").slice(0, 3)).toEqual(["{", '  "cautions": [', '    "The pilot decides."']);
  expect(pretty.endsWith("}\n")).toBe(true);
});
