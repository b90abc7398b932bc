/** One cause of doubt in a result. */
export interface Contribution {
  readonly name: string;
  /** Standard doubt of the input (k = 1), 0 or more, in the input's unit. */
  readonly standard: number;
  /** d(result)/d(input), signed. */
  readonly sensitivity: number;
  /** Degrees of freedom of `standard`, 1 or more. Left out: infinitely many. */
  readonly dof?: number;
}

/** How far two inputs err together, from -1 to +1. */
export interface Correlation {
  readonly between: readonly [name: string, name: string];
  readonly coefficient: number;
}

/** The doubt of a result and where it comes from. Unit of the result. */
export interface Propagated {
  /** Combined standard doubt (k = 1). */
  readonly standard: number;
  /** Effective degrees of freedom; Infinity where no input limits them. */
  readonly dof: number;
  /** Largest share first; equal shares in the order of the contributions. */
  readonly budget: readonly BudgetLine[];
}

/** One input's part in a doubt. */
export interface BudgetLine {
  readonly name: string;
  /** What this input alone would make of the result: |sensitivity| times its standard doubt. */
  readonly standard: number;
  /** Part of the combined variance; all parts add up to 1. Below 0 where a correlation makes the input cancel others. */
  readonly share: number;
}

/** Why correlations cannot be used. */
export type CorrelationProblem =
  | { readonly kind: "unknownInput"; readonly name: string }
  /** A coefficient beyond 1, of an input with itself, or several that would leave the result less than no doubt. */
  | { readonly kind: "impossibleCorrelation" };

/**
 * Law of propagation for independent inputs, with effective degrees of freedom after Welch and Satterthwaite.
 * Source: JCGM 100:2008 5.1.2 (10) and G.4.1 (G.2b).
 */
export function propagate(contributions: readonly Contribution[]): Propagated {
  const signed = contributions.map((one) => one.sensitivity * one.standard);
  const terms = signed.map((value) => value ** 2);
  return combined(contributions, terms, welchSatterthwaite(contributions));
}

/**
 * As `propagate`, for inputs of which some err together; names must be unique. Degrees of freedom: Welch-Satterthwaite
 * holds for independent inputs only, so that where a correlated one has finitely many, the fewest of any input count,
 * which are never too many. Source: JCGM 100:2008 5.2.2 (16).
 */
export function propagateCorrelated(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[],
): Propagated | CorrelationProblem {
  const at = new Map(contributions.map((one, index) => [one.name, index]));
  const signed = contributions.map((one) => one.sensitivity * one.standard);
  const terms = signed.map((value) => value ** 2);
  let fewestCount = false;
  for (const { between, coefficient } of correlations) {
    const [first, second] = between.map((name) => at.get(name));
    if (first === undefined) return { kind: "unknownInput", name: between[0] };
    if (second === undefined) return { kind: "unknownInput", name: between[1] };
    if (first === second || Math.abs(coefficient) > 1) return { kind: "impossibleCorrelation" };
    // Both inputs get one of the two equal cross terms, so that the shares still add up.
    const cross = coefficient * (signed[first] ?? 0) * (signed[second] ?? 0);
    terms[first] = (terms[first] ?? 0) + cross;
    terms[second] = (terms[second] ?? 0) + cross;
    fewestCount ||= [first, second].some((index) => Number.isFinite(contributions[index]?.dof ?? Infinity));
  }
  const squares = signed.reduce((sum, value) => sum + value ** 2, 0);
  const variance = terms.reduce((sum, term) => sum + term, 0);
  if (variance < -ROUND_OFF * squares) return { kind: "impossibleCorrelation" };
  // Inputs that cancel leave a few digits of round-off, of either sign.
  const cancels = variance <= ROUND_OFF * squares;
  return combined(
    contributions,
    cancels ? terms.map(() => 0) : terms,
    fewestCount ? fewestDof(contributions) : welchSatterthwaite(contributions),
  );
}

/**
 * Correlation of two inputs that share one cause, such as the zero of an instrument: `shared` is the standard doubt of
 * that cause as it stands in both, `first` and `second` their whole standard doubts, above 0, all in one unit.
 * Source: JCGM 100:2008 F.1.2.3.
 */
export function sharedCorrelation(shared: number, first: number, second: number): number {
  return shared ** 2 / (first * second);
}

const ROUND_OFF = 1e-14;

function combined(inputs: readonly Contribution[], terms: readonly number[], dof: number): Propagated {
  const variance = terms.reduce((sum, term) => sum + term, 0);
  const budget = inputs.map((input, index) => ({
    name: input.name,
    standard: Math.abs(input.sensitivity) * input.standard,
    share: variance === 0 ? 0 : (terms[index] ?? 0) / variance,
  }));
  budget.sort((first, second) => second.share - first.share);
  return { standard: Math.sqrt(variance), dof, budget };
}

function welchSatterthwaite(inputs: readonly Contribution[]): number {
  const squares = inputs.map((input) => (input.sensitivity * input.standard) ** 2);
  const variance = squares.reduce((sum, square) => sum + square, 0);
  if (variance === 0) return Infinity;
  // As shares of the variance, because a fourth power of a small doubt would underflow.
  const denominator = squares.reduce(
    (sum, square, index) => sum + (square / variance) ** 2 / (inputs[index]?.dof ?? Infinity),
    0,
  );
  return 1 / denominator;
}

function fewestDof(inputs: readonly Contribution[]): number {
  return Math.min(...inputs.map((input) => input.dof ?? Infinity));
}
