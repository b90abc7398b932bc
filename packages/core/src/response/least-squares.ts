import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { factorise } from "./orthogonal.ts";

/** A least-squares problem in plain numbers. */
export interface LeastSquaresProblem {
  /** Parameters -> residuals, each in its own standard doubts: always the same number, two or more and not less than parameters, all finite. */
  residualsAt(parameters: readonly number[]): readonly number[];
  readonly start: readonly number[];
  /** A small but noticeable change of each parameter, above 0: what the search measures its steps in. */
  readonly units: readonly number[];
}

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Standard doubt of each parameter where a residual of 1 is one standard doubt. */
  readonly doubts: readonly number[];
  readonly residuals: readonly number[];
  /** Sum of the squared residuals. */
  readonly chiSquare: number;
  /** Whether the search came to rest; at a corner of the residuals it may creep, and what it then has is near the least. */
  readonly settled: boolean;
}

/** The library's search stops here; what is left is done by `polish`. */
const LIBRARY_STEPS = 30;
const POLISH_STEPS = 50;
/** A step is not halved below this part of it. */
const SHORTEST_SHARE = 1e-6;
/** A step of less than this part of every unit is none. */
const NO_STEP = 1e-9;
/** Part of a unit over which slopes are taken. */
const SLOPE_STEP = 1e-3;

/**
 * The parameters with the least sum of squared residuals near a start, or undefined where the residuals do not tell the
 * parameters apart or are not finite at the start. Deterministic: the library gets no time limit, which is its only use of a clock.
 */
export function fitLeastSquares(problem: LeastSquaresProblem): LeastSquaresFit | undefined {
  if (!problem.residualsAt(problem.start).every(Number.isFinite)) return undefined;
  return polish(problem, searchNear(problem));
}

/** Levenberg and Marquardt's search, in units from the start: at first a step of one unit counts as much as one doubt. */
function searchNear({ residualsAt, start, units }: LeastSquaresProblem): readonly number[] {
  const place = (steps: readonly number[]) =>
    start.map((value, i) => value + (steps[i] ?? 0) * (units[i] ?? 1));
  const count = residualsAt(start).length;
  const { parameterValues } = levenbergMarquardt(
    { x: Array.from({ length: count }, (_, i) => i), y: new Array<number>(count).fill(0) },
    (steps: number[]) => {
      const residuals = residualsAt(place(steps));
      return (i: number) => residuals[i] ?? 0;
    },
    {
      initialValues: start.map(() => 0),
      jacobianFunction: (steps: number[]) => {
        const columns = slopesAt({ residualsAt, start, units }, place(steps));
        return (i: number) => columns.map((column) => column[i] ?? 0);
      },
      damping: 1,
      maxIterations: LIBRARY_STEPS,
      errorTolerance: 1e-12,
    },
  );
  return place(parameterValues);
}

/**
 * Gauss and Newton's steps, halved until the sum falls. The library keeps what it gained but goes on from steps that lost,
 * so that it can stop short of the lowest point.
 */
function polish(problem: LeastSquaresProblem, from: readonly number[]): LeastSquaresFit | undefined {
  let best = { parameters: from, ...sizeOf(problem.residualsAt(from)) };
  for (let step = 0; ; step++) {
    const factors = factorise(slopesAt(problem, best.parameters));
    if (factors === undefined) return undefined;
    const steps = factors.solve(best.residuals);
    const next = steps.every((change) => Math.abs(change) < NO_STEP)
      ? undefined
      : lower(problem, best, steps);
    if (next === undefined || step === POLISH_STEPS) {
      const doubts = factors.doubts().map((doubt, i) => doubt * (problem.units[i] ?? 1));
      return { ...best, doubts, settled: next === undefined };
    }
    best = next;
  }
}

type Found = Pick<LeastSquaresFit, "parameters" | "residuals" | "chiSquare">;

/** The longest of a step, its half, its quarter and so on that lowers the sum; undefined where rounding hides any fall. */
function lower(problem: LeastSquaresProblem, from: Found, steps: readonly number[]): Found | undefined {
  for (let share = 1; share > SHORTEST_SHARE; share /= 2) {
    const parameters = from.parameters.map(
      (value, i) => value - share * (steps[i] ?? 0) * (problem.units[i] ?? 1),
    );
    const next = { parameters, ...sizeOf(problem.residualsAt(parameters)) };
    if (next.chiSquare < from.chiSquare) return next;
  }
  return undefined;
}

function sizeOf(residuals: readonly number[]): Pick<Found, "residuals" | "chiSquare"> {
  return { residuals, chiSquare: residuals.reduce((sum, value) => sum + value ** 2, 0) };
}

/** d(residual)/d(parameter in units), one column a parameter, by central differences. */
function slopesAt(problem: LeastSquaresProblem, parameters: readonly number[]): readonly number[][] {
  return parameters.map((value, i) => {
    const half = SLOPE_STEP * (problem.units[i] ?? 1);
    const above = problem.residualsAt(parameters.with(i, value + half));
    const below = problem.residualsAt(parameters.with(i, value - half));
    return above.map((residual, row) => (residual - (below[row] ?? 0)) / (2 * SLOPE_STEP));
  });
}
