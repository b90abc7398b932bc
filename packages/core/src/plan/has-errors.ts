import type { Finding } from "../findings/finding.ts";

/** Whether any of the findings, of a plan or otherwise, is an error: a plan with one must not be entered. */
export function hasErrors({ findings }: { readonly findings: readonly Finding[] }): boolean {
  return findings.some(({ severity }) => severity === "error");
}
