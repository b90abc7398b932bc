import * as z from "zod";
import { modelSchema } from "./model-schema.ts";

/** The JSON Schema (2020-12) of `Model` as plain data; the same keys in the same order every time. */
export function modelJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...schema } = z.toJSONSchema(modelSchema, { target: "draft-2020-12" });
  return { $schema, title: "Hingeline model", ...schema };
}
