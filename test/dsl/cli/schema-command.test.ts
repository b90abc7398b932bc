import { asBuiltJsonSchema, modelJsonSchema, planJsonSchema } from "@hingeline/core/schema";
import { expect, test } from "vitest";
import { run } from "./run.ts";

test.each([
  ["model", modelJsonSchema()],
  ["plan", planJsonSchema()],
  ["as-built", asBuiltJsonSchema()],
])("schema %s prints the JSON Schema of draft 2020-12", async (document, schema) => {
  const { exitCode, stdout, stderr } = await run(["schema", document]);
  expect([exitCode, stderr]).toEqual([0, ""]);
  expect(stdout).toBe(`${JSON.stringify(schema, undefined, 2)}\n`);
  expect(JSON.parse(stdout)).toMatchObject({ $schema: "https://json-schema.org/draft/2020-12/schema" });
});
