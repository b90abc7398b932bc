import type { LinkageProblem } from "./drive.ts";

/** The first of the named lengths that is not above zero, as a problem. */
export function findNonLength(lengthsMm: Readonly<Record<string, number>>): LinkageProblem | undefined {
  for (const [name, lengthMm] of Object.entries(lengthsMm)) {
    if (!(lengthMm > 0)) return { kind: "notALength", name, lengthMm };
  }
  return undefined;
}
