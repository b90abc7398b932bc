import { compile, type Model } from "@hingeline/core";
import { parseModel, parsePlan } from "@hingeline/core/schema";
import bramblehook from "@hingeline/examples/bramblehook";
import corvane from "@hingeline/examples/corvane";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import { expect, test } from "vitest";

const examples: Readonly<Record<string, Model>> = { bramblehook, corvane, ostrevale, slatewing };

test.each(Object.entries(examples))("the plan of %s is the committed one", async (name, model) => {
  const plan = compile(model);
  expect(parsePlan(JSON.parse(JSON.stringify(plan)))).toEqual({ plan: JSON.parse(JSON.stringify(plan)) });
  await expect(`${JSON.stringify(plan, undefined, 2)}\n`).toMatchFileSnapshot(`../golden/${name}.plan.json`);
});

test.each(Object.entries(examples))("%s is plain data that the schema accepts", (_, model) => {
  expect(parseModel(JSON.parse(JSON.stringify(model)))).toEqual({ model });
});
