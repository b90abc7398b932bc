import { canonicalJson } from "./canonical-json.ts";
import type { SetupPlan } from "./setup-plan.ts";
import { sha256 } from "./sha256.ts";

/** Sixty-four hexadecimal digits that change with anything in the plan: the SHA-256 of its canonical JSON. */
export function fingerprintOf(plan: SetupPlan): string {
  return sha256(canonicalJson(plan));
}

/** What people read and copy of a fingerprint: its first eight digits. */
export function revisionOf(fingerprint: string): string {
  return fingerprint.slice(0, 8);
}
