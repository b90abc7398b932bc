import { type Contribution, type Propagated, propagate } from "./propagate.ts";

/**
 * Doubt of the difference of two results that have some causes in common, such as the meter that read both. A cause named
 * in `shared` that both have errs once and acts on both: its part in the second is taken from its part in the first, with
 * their signs, and it has one line in the budget. Every other cause errs on each side by itself and has a line for each.
 * Names are unique within a side. Source: JCGM 100:2008 5.2.2 (16) with the correlations of F.1.2.3, summed cause by cause.
 */
export function propagateDifference(
  first: readonly Contribution[],
  second: readonly Contribution[],
  shared: ReadonlySet<string>,
): Propagated {
  const twins = new Map(second.filter(({ name }) => shared.has(name)).map((one) => [one.name, one]));
  const met = new Set<string>();
  const ofFirst = first.map((own): Contribution => {
    const twin = twins.get(own.name);
    if (twin === undefined) return own;
    met.add(own.name);
    return together(own, twin);
  });
  return propagate([...ofFirst, ...second.filter(({ name }) => !met.has(name))]);
}

/** One error as it stands in the difference. It may be of another size in the second, as where that stands on a steeper slope. */
function together(own: Contribution, twin: Contribution): Contribution {
  const left = own.sensitivity * own.standard - twin.sensitivity * twin.standard;
  const dof = Math.min(own.dof ?? Infinity, twin.dof ?? Infinity);
  return {
    name: own.name,
    standard: Math.abs(left),
    sensitivity: 1,
    ...(dof === Infinity ? {} : { dof }),
  };
}
