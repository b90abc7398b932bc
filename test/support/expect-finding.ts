import { expect } from "vitest";
import { compile } from "../../packages/core/src/compile/compile.ts";
import type { Finding } from "../../packages/core/src/findings/finding.ts";
import type { FindingCode } from "../../packages/core/src/findings/make-finding.ts";
import type { Model } from "../../packages/core/src/model/model.ts";

/** The one finding of this code at this address; fails where there is none or more than one. */
export function findingOf(model: Model, code: FindingCode, at: string): Finding {
  const { findings } = compile(model);
  const found = findings.filter((finding) => finding.code === code && finding.at === at);
  expect(found, `findings: ${JSON.stringify(findings, undefined, 1)}`).toHaveLength(1);
  return found[0] as Finding;
}

/** The codes of all findings of a model, in their order. */
export function codesOf(model: Model): string[] {
  return compile(model).findings.map(({ code }) => code);
}
