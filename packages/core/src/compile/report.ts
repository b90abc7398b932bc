import type { Address } from "../address/address.ts";
import type { Finding } from "../findings/finding.ts";
import { type FactsOf, type FindingCode, makeFinding } from "../findings/make-finding.ts";

/** Where the steps of the compiler put what they find; all is collected, nothing stops at the first. */
export type Report = <Code extends FindingCode>(code: Code, at: Address, facts: FactsOf<Code>) => void;

/** A report that appends to `findings`, each finding once. */
export function reportTo(findings: Finding[]): Report {
  const known = new Set<string>();
  return (code, at, facts) => {
    const finding = makeFinding(code, at, facts);
    const identity = `${finding.code} ${finding.at} ${finding.message}`;
    if (known.has(identity)) return;
    known.add(identity);
    findings.push(finding);
  };
}
