export { modelFindings } from "./model/model-findings.ts";
export { modelJsonSchema } from "./model/model-json-schema.ts";
export type { ModelProblem } from "./model/model-problem.ts";
export { parseModel } from "./model/parse-model.ts";
export { asBuiltJsonSchema } from "./plan/as-built-json-schema.ts";
export { parseAsBuilt } from "./plan/parse-as-built.ts";
export { parsePlan } from "./plan/parse-plan.ts";
export { planJsonSchema } from "./plan/plan-json-schema.ts";
