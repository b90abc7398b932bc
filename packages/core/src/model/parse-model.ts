import { copyPlain } from "./copy-plain.ts";
import type { Model } from "./model.ts";
import type { ModelProblem } from "./model-problem.ts";
import { modelSchema } from "./model-schema.ts";
import { translateIssues } from "./translate-issues.ts";

/**
 * `data` as a model, copied, or every reason why it is none. It never throws, whatever it is given.
 * It sees to the form of a model only: that names are declared, that `level` lies between the stops and that channels
 * differ is for `compile`.
 */
export function parseModel(
  data: unknown,
): { readonly model: Model } | { readonly problems: readonly ModelProblem[] } {
  const plain = copyPlain(data);
  if ("problems" in plain) return plain;
  const parsed = modelSchema.safeParse(plain.data);
  if (!parsed.success) return { problems: translateIssues(parsed.error.issues, plain.data) };
  // The schema's type is the interface's without the units: model-schema.ts holds that they agree.
  return { model: parsed.data as unknown as Model };
}
