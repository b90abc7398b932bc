import * as z from "zod";
import { planSchema } from "./plan-schema.ts";

/** The JSON Schema (2020-12) of the setup plan as plain data; the same keys in the same order every time. */
export function planJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...schema } = z.toJSONSchema(planSchema, { target: "draft-2020-12" });
  return { $schema, title: "Hingeline setup plan", ...schema };
}
