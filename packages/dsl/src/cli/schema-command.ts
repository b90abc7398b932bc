import { asBuiltJsonSchema, modelJsonSchema, planJsonSchema } from "@hingeline/core/schema";
import { exitDone } from "./exit-code.ts";
import type { Io } from "./io.ts";

const schemas = { model: modelJsonSchema, plan: planJsonSchema, "as-built": asBuiltJsonSchema };

export interface SchemaArgs {
  readonly document: keyof typeof schemas;
}

/** Prints the JSON Schema (2020-12) of a document. */
export async function schemaCommand({ document }: SchemaArgs, io: Io): Promise<number> {
  io.stdout.write(`${JSON.stringify(schemas[document](), undefined, 2)}\n`);
  return exitDone;
}
