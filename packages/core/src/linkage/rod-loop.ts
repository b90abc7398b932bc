import { hypotOf } from "../numeric/hypotenuse.ts";
import { type Branch, isBetween } from "./branch.ts";
import { type Circle, offsetOf } from "./circle.ts";
import type { LinkageProblem } from "./drive.ts";
import { type LoopEquation, loopEquation } from "./loop-equation.ts";
import { firstRoot } from "./roots.ts";
import { length, minus, plus } from "./vector.ts";

/** A rod between two turning balls: its branch and its levers. */
export interface RodLoop extends Branch {
  readonly arm: Circle;
  readonly horn: Circle;
  readonly rodMm: number;
  readonly levelRad: number;
  /** d(deflection)/d(rotation); undefined off the branch and at a dead centre. */
  ratioAt(rotationRad: number): number | undefined;
  /** Levers of the rod, about the shaft and about the hinge, at a rotation and the deflection that goes with it. */
  shaftLeverAt(rotationRad: number, deflectionRad: number): number;
  hornLeverAt(rotationRad: number, deflectionRad: number): number;
  /** Squared distance of the balls, at any rotation and deflection, less the squared rod: 0 on a branch. */
  excessAt(rotationRad: number, deflectionRad: number): number;
}

/** The branch of arm, rod and horn on the side of the level layout. */
export function rodLoop(arm: Circle, horn: Circle, givenRodMm?: number): RodLoop | LinkageProblem {
  const rodMm = givenRodMm ?? length(minus(plus(offsetOf(arm, horn), arm.level), horn.level));
  const equation = loopEquation(arm, horn, rodMm);
  const { excessAt, byRotation, byDeflection } = equation;
  const level = levelOf(equation, rodMm);
  if ("kind" in level) return level;
  const levelRad = givenRodMm === undefined ? 0 : level.deflectionRad;
  if (isHornOnShaft(equation, arm, rodMm, levelRad)) return { kind: "deadCentreAtLevel" };

  const ends = endsOf(equation, level.reach);
  const deflectionAt = followed(equation, level.side, levelRad, ends);
  return {
    arm,
    horn,
    rodMm,
    levelRad,
    ...ends,
    lowKind: ends.lowRad === -Infinity ? "full" : "deadCentreHorn",
    highKind: ends.highRad === Infinity ? "full" : "deadCentreHorn",
    deflectionAt,
    candidateAt: equation.rotationAt,
    turnAt: (rotationRad) => byRotation(rotationRad, deflectionAt(rotationRad) ?? 0),
    ratioAt: (rotationRad) => {
      const deflectionRad = deflectionAt(rotationRad);
      if (deflectionRad === undefined) return undefined;
      const ratio = -byRotation(rotationRad, deflectionRad) / byDeflection(rotationRad, deflectionRad);
      return Number.isFinite(ratio) ? ratio : undefined;
    },
    shaftLeverAt: (rotationRad, deflectionRad) => -byRotation(rotationRad, deflectionRad) / (2 * rodMm),
    hornLeverAt: (rotationRad, deflectionRad) => byDeflection(rotationRad, deflectionRad) / (2 * rodMm),
    excessAt,
  };
}

/** How the loop stands with the arm at level: the side of the declared horn, and the deflection that the rod asks for there. */
interface Level {
  readonly side: number;
  readonly deflectionRad: number;
  /** Half the difference of the longest and the shortest squared rod, square millimetres. */
  readonly reach: number;
}

function levelOf(equation: LoopEquation, rodMm: number): Level | LinkageProblem {
  const { p, q, r } = equation.termsAt(0);
  const reach = hypotOf(p, q);
  if (!(rodMm > 0) || Math.abs(q) <= 1e-12 * reach) return { kind: "deadCentreAtLevel" };
  const side = -Math.sign(q);
  const deflectionRad = equation.deflectionAt(0, side);
  if (deflectionRad !== undefined) return { side, deflectionRad, reach };
  const middle = r + rodMm ** 2;
  const shortestMm = Math.sqrt(Math.max(0, middle - reach));
  return { kind: "cannotAssemble", rodMm, shortestMm, longestMm: Math.sqrt(middle + reach) };
}

/** Whether the horn's ball stands on the shaft's own line at level: then the arm turns and moves nothing. */
function isHornOnShaft(equation: LoopEquation, arm: Circle, rodMm: number, levelRad: number): boolean {
  const least = 1e-12 * arm.radiusMm * rodMm;
  return [0, Math.PI / 2].every(
    (rotationRad) => Math.abs(equation.byRotation(rotationRad, levelRad)) <= least,
  );
}

interface Ends {
  readonly lowRad: number;
  readonly highRad: number;
}

/** Where the rod no longer reaches, a turn either way; infinite where it always does. */
function endsOf(equation: LoopEquation, levelReach: number): Ends {
  const assemblyAt = (rotationRad: number) => {
    const { p, q, r } = equation.termsAt(rotationRad);
    return p ** 2 + q ** 2 - r ** 2;
  };
  // A touch: arm, rod and horn all in line at once, where the two branches meet and nothing says which one goes on.
  const touch = 1e-13 * levelReach ** 2;
  const lowRad = firstRoot(assemblyAt, 0, -2 * Math.PI, touch);
  const highRad = firstRoot(assemblyAt, 0, 2 * Math.PI, touch);
  // The same places come round again: where rounding shows a touch in one sense alone, it stands in the other too.
  return {
    lowRad: lowRad ?? (highRad === undefined ? -Infinity : highRad - 2 * Math.PI),
    highRad: highRad ?? (lowRad === undefined ? Infinity : lowRad + 2 * Math.PI),
  };
}

/** Rotation -> deflection, followed without a jump from level on. */
function followed(equation: LoopEquation, side: number, levelRad: number, { lowRad, highRad }: Ends) {
  const rawAt = (rotationRad: number) => equation.deflectionAt(rotationRad, side);
  const { slope, heightRad } = lineThrough(rawAt, levelRad, { lowRad, highRad });
  return (rotationRad: number): number | undefined => {
    if (!isBetween(rotationRad, lowRad, highRad)) return undefined;
    const raw = rawAt(rotationRad);
    if (raw === undefined) return undefined;
    return raw - 2 * Math.PI * Math.round((raw - slope * rotationRad - heightRad) / (2 * Math.PI));
  };
}

/**
 * The straight line that a branch's deflection keeps within half a turn of, all along: its slope, and its height at level.
 * Where the shaft turns for ever the slope is a whole number, the turns of the horn for one of the shaft.
 */
function lineThrough(
  rawAt: (rotationRad: number) => number | undefined,
  levelRad: number,
  { lowRad, highRad }: Ends,
): { readonly slope: number; readonly heightRad: number } {
  const walk = (to: number): Place[] => {
    const count = Math.ceil(Math.abs(to) / (Math.PI / 90));
    const path: Place[] = [[0, levelRad]];
    for (let i = 1; i <= count; i++) {
      const rotationRad = (to * i) / count;
      const [, last] = path[i - 1] ?? [0, levelRad];
      const raw = rawAt(rotationRad) ?? last;
      path.push([rotationRad, raw - 2 * Math.PI * Math.round((raw - last) / (2 * Math.PI))]);
    }
    return path;
  };
  const isEndless = highRad === Infinity;
  const [down, up] = isEndless ? [[], walk(2 * Math.PI)] : [walk(lowRad), walk(highRad)];
  const [fromRad, from] = down.at(-1) ?? [0, levelRad];
  const [toRad, to] = up.at(-1) ?? [0, levelRad];
  const mean = (to - from) / (toRad - fromRad);
  const slope = isEndless ? Math.round(mean) : mean;
  const rest = [...down, ...up].map(([rotationRad, deflectionRad]) => deflectionRad - slope * rotationRad);
  return { slope, heightRad: (Math.min(...rest) + Math.max(...rest)) / 2 };
}

/** A rotation and the deflection there, radians. */
type Place = readonly [rotationRad: number, deflectionRad: number];
