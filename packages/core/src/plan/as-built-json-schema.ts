import * as z from "zod";
import { asBuiltSchema } from "./as-built-schema.ts";

/** The JSON Schema (2020-12) of the as-built document as plain data; the same keys in the same order every time. */
export function asBuiltJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...schema } = z.toJSONSchema(asBuiltSchema, { target: "draft-2020-12" });
  return { $schema, title: "Hingeline as-built", ...schema };
}
