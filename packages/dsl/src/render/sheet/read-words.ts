import { type DeflectionVerdict, formatNumber, type LineVerdict } from "@hingeline/core";
import { signed } from "../numbers.ts";
import { outcomeText } from "../verify-words.ts";

/** "1698.0", "+13.6", "none" where a channel is right to be silent; undefined where nothing was read. */
export function readText(verdict: LineVerdict): string | undefined {
  switch (verdict.quantity) {
    case "pulse":
      if (verdict.silent === true) return "none";
      return verdict.readUs === undefined ? undefined : formatNumber(verdict.readUs, 1);
    case "deflection":
      return verdict.readDeg === undefined ? undefined : signed(verdict.readDeg, 1);
    case "match":
      return verdict.byDeg === undefined ? undefined : signed(verdict.byDeg, 1);
  }
}

/** "agrees", "DIFFERS by -500.0", "not measured": the verdict in words, and by how much it is out. */
export function verdictText(verdict: LineVerdict): string {
  if (verdict.outcome === "notMeasured") return "not measured";
  const by = verdict.quantity === "pulse" ? verdict.byUs : verdict.byDeg;
  const out = verdict.outcome === "differs" && by !== undefined && verdict.quantity !== "match";
  return out ? `${outcomeText(verdict)} by ${signed(by, 1)}` : outcomeText(verdict);
}

/** What a deflection must read: "+13.8 ±0.7"; empty where no degrees are known. */
export function expectedText(verdict: DeflectionVerdict | undefined): string {
  if (verdict === undefined) return "";
  const { expectedDeg, withinDeg } = verdict;
  return `${signed(expectedDeg, 1)}${withinDeg === undefined ? "" : ` ±${formatNumber(withinDeg, 1)}`}`;
}
