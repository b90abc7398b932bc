// Stands in for fast-check while mutants are tried. One that lives may still fall to all runs: MOST_RUNS=1000 tries them.
import * as fc from "../../node_modules/fast-check/lib/fast-check.js";

const MOST_RUNS = Number(process.env.MOST_RUNS ?? 25);

const assert: typeof fc.assert = (property, parameters = {}) =>
  fc.assert(property, {
    ...parameters,
    numRuns: Math.min(parameters.numRuns ?? 100, MOST_RUNS),
    // Nobody reads the counterexample.
    endOnFailure: true,
  }) as never;

export default { ...fc, assert };
