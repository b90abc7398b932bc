import { createHash } from "node:crypto";
import { canonicalJson, type SetupPlan } from "@hingeline/core";

/** Eight hexadecimal digits that change with anything in the plan: the start of the SHA-256 of its canonical JSON. */
export function fingerprintOf(plan: SetupPlan): string {
  return createHash("sha256").update(canonicalJson(plan)).digest("hex").slice(0, 8);
}

/** The source expression that admits an inline script or style in a Content-Security-Policy (CSP level 3). */
export function admit(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
