import type { Contribution } from "./propagate.ts";

/** A value that is not known exactly. */
export interface UncertainInput {
  readonly name: string;
  readonly value: number;
  /** Standard doubt (k = 1), 0 or more, in the unit of `value`. */
  readonly standard: number;
  /** Degrees of freedom of `standard`; left out: infinitely many. */
  readonly dof?: number;
}

/**
 * What each input contributes to the doubt of a result, with sensitivities from central differences of a thousandth of
 * each standard doubt. Inputs without doubt contribute nothing and are left out. Undefined where `model`, which takes
 * the values in the order of the inputs, has no finite result next to them. Source: JCGM 100:2008 5.1.3.
 */
export function linearise(
  model: (values: readonly number[]) => number | undefined,
  inputs: readonly UncertainInput[],
): Contribution[] | undefined {
  const values = inputs.map((input) => input.value);
  const contributions: Contribution[] = [];
  for (const [index, { name, value, standard, dof }] of inputs.entries()) {
    if (standard === 0) continue;
    const [low, high] = [value - standard * STEP, value + standard * STEP];
    const rise = (model(values.with(index, high)) ?? NaN) - (model(values.with(index, low)) ?? NaN);
    // Divided by the step as it was rounded, not as it was meant.
    const sensitivity = rise / (high - low);
    if (!Number.isFinite(sensitivity)) return undefined;
    contributions.push({ name, standard, sensitivity, ...(dof === undefined ? {} : { dof }) });
  }
  return contributions;
}

const STEP = 1e-3;
