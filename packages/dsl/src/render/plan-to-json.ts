import { canonicalJson, type SetupPlan } from "@hingeline/core";

/**
 * The plan as canonical JSON (RFC 8785) and a line feed: the same plan gives the same bytes. `pretty` sets the same content out
 * in lines, indented by two spaces, for people to read.
 */
export function planToJson(plan: SetupPlan, { pretty = false }: { readonly pretty?: boolean } = {}): string {
  const canonical = canonicalJson(plan);
  return `${pretty ? JSON.stringify(JSON.parse(canonical), undefined, 2) : canonical}\n`;
}
