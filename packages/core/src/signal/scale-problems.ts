import type { SignalScale } from "./signal-scale.ts";

/** What makes a signal scale unusable: a number that has to be above zero, or a reach that is less than one step. */
export type ScaleProblem =
  | {
      readonly kind: "not-positive";
      readonly field: "centre" | "per100" | "reach" | "step";
      readonly value: number;
    }
  | { readonly kind: "step-past-reach"; readonly stepPercent: number; readonly reachPercent: number };

/**
 * Every problem of a scale, none where it can be used. A span of 100 percent is above zero: the pulse grows with the
 * percent, and a channel that is reversed says so elsewhere.
 */
export function scaleProblems(scale: SignalScale): ScaleProblem[] {
  const spans = typeof scale.per100 === "number" ? [scale.per100] : [scale.per100.below, scale.per100.above];
  const problems: ScaleProblem[] = [
    ...notPositive("centre", scale.centre),
    ...spans.flatMap((span) => notPositive("per100", span)),
    ...notPositive("reach", scale.reach),
    ...notPositive("step", scale.step),
  ];
  if (problems.length === 0 && scale.step > scale.reach)
    problems.push({ kind: "step-past-reach", stepPercent: scale.step, reachPercent: scale.reach });
  return problems;
}

function notPositive(field: "centre" | "per100" | "reach" | "step", value: number): ScaleProblem[] {
  return value > 0 ? [] : [{ kind: "not-positive", field, value }];
}
