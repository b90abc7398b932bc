// Stands in for fast-check while mutants are tried: a mutant that lives is tried again on the whole of its properties' runs.
import * as fc from "../../node_modules/fast-check/lib/fast-check.js";

const MOST_RUNS = Number(process.env.MOST_RUNS ?? 25);

const assert: typeof fc.assert = (property, parameters = {}) =>
  fc.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters.numRuns ?? 250, MOST_RUNS),
    // Nobody reads the counterexample.
    endOnFailure: true,
  }) as never;

export default { ...fc, assert };
