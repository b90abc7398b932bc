import type { Finding } from "../findings/finding.ts";
import { makeFinding } from "../findings/make-finding.ts";
import type { ModelProblem } from "./model-problem.ts";

/** The problems of data that is no model, as findings. */
export function modelFindings(problems: readonly ModelProblem[]): Finding[] {
  return problems.map((problem) =>
    makeFinding("model-malformed", problem.address, {
      problem: `Expected ${problem.expected}, got ${problem.received}.`,
      remedy: remedy(problem),
      ...(problem.kind === "outOfRange" ? { value: problem.value, limit: problem.limit } : {}),
    }),
  );
}

function remedy(problem: ModelProblem): string {
  if ("nearest" in problem && problem.nearest !== undefined) return `Did you mean "${problem.nearest}"?`;
  switch (problem.kind) {
    case "missing":
      return "Add it.";
    case "outOfRange":
      return "Check the unit and the decimal point.";
    case "unknownKey":
      return `Take it out; what can stand here is ${problem.known.join(", ")}.`;
    default:
      return "Correct it.";
  }
}
