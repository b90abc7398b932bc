import { createHash } from "node:crypto";

/** The source expression that admits an inline script or style in a Content-Security-Policy (CSP level 3). */
export function admit(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
