export { type FindingOptions, findingsToText } from "./findings-to-text.ts";
export { planToJson } from "./plan-to-json.ts";
export { planToText } from "./plan-to-text.ts";
export { verifyToText } from "./verify-to-text.ts";
