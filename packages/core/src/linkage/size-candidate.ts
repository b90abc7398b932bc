import { radians } from "../numeric/angle.ts";
import { hypotOf } from "../numeric/hypotenuse.ts";
import { type Deg, type DegPerUs, deg, degPerUs, type Mm, mm } from "../units/quantity.ts";
import { ballRodFromRule } from "./ball-rod-from-rule.ts";
import { type Drive, isLinkageProblem } from "./drive.ts";
import { drive } from "./drives.ts";
import { largestOver } from "./largest-over.ts";
import type { BallRod, Pushrod } from "./linkage.ts";
import type { SizeTask } from "./size-task.ts";
import { inView, length, minus } from "./vector.ts";

/** One combination of what can be chosen. */
export interface Candidate {
  /** Ready to declare; the rod is what fits at level. */
  readonly linkage: Pushrod | BallRod;
  readonly arm: Mm;
  /** Angle of the arm with the servo at its middle, and with the surface level. */
  readonly armAngle: Deg;
  readonly armAt: Deg;
  /** Where level lies, as rotation from the servo's middle. */
  readonly levelRotation: Deg;
  readonly horn: Mm;
  readonly hornAt: Deg;
}

/** The numbers of a combination that does what is wanted. */
export interface SizeVerdict {
  /** Pin to pin. */
  readonly rod: Mm;
  /** Rotation from level at the wanted deflections. */
  readonly rotationUp: Deg;
  readonly rotationDown: Deg;
  /** d(deflection)/d(rotation), signed. */
  readonly ratioUp: number;
  readonly ratioLevel: number;
  readonly ratioDown: number;
  /** Largest |ratio| over the used travel: the surface gets the servo's torque divided by it, at the least. */
  readonly worstRatio: number;
  /** Least sine of the angle between the rod and arm or horn over the used travel. */
  readonly worstSine: number;
  /** What one microsecond moves the surface by where it moves it most. */
  readonly steepest: DegPerUs;
  /** Difference of the rotations up and down, as a part of the larger: 0 even, 1 all on one side. */
  readonly unevenness: number;
}

/**
 * `cannotBeMade`: at level in a dead centre, or a length of 0; `notReached`: a wanted deflection lies beyond the linkage's
 * monotone range; `travelTooShort`: the servo does not turn that far; `nearDeadCentre`: rod and arm, or rod and horn, come
 * too near to one line.
 */
export type CandidateFault = "cannotBeMade" | "notReached" | "travelTooShort" | "nearDeadCentre";

/** Every combination of a task's lists, the last list running fastest. */
export function* listCandidates(task: SizeTask): Generator<Candidate> {
  const { place, armHoles, armAngles, levelRotations = [deg(0)], hornHoles, hornAngles } = task;
  // A positive turn lowers a layout angle seen from the port tip and raises one seen from below.
  const sense = place.kind === "space" && place.shaft === "upright" ? 1 : -1;
  for (const arm of armHoles) {
    for (const armAngle of armAngles) {
      for (const levelRotation of levelRotations) {
        const armAt = deg(armAngle + sense * levelRotation);
        for (const horn of hornHoles) {
          for (const hornAt of hornAngles) {
            const linkage = linkageOf(task, { arm, armAt, horn, hornAt });
            yield { linkage, arm, armAngle, armAt, levelRotation, horn, hornAt };
          }
        }
      }
    }
  }
}

/** What a combination does, or what is wrong with it first. */
export function judgeCandidate(
  candidate: Candidate,
  { wanted, servo }: SizeTask,
  leastSine: number,
): SizeVerdict | CandidateFault {
  const made = drive(candidate.linkage);
  if (isLinkageProblem(made)) return "cannotBeMade";
  const [rotationUp, rotationDown] = [made.rotationAt(wanted.up), made.rotationAt(wanted.down)];
  if (rotationUp === undefined || rotationDown === undefined) return "notReached";
  const farthest = Math.max(
    ...[rotationUp, rotationDown].map((used) => Math.abs(candidate.levelRotation + used)),
  );
  if (farthest > servo.travel) return "travelTooShort";
  // The ends first: most combinations fail there.
  const atEnds = Math.min(sineAt(made, rotationUp), sineAt(made, rotationDown));
  if (atEnds < leastSine) return "nearDeadCentre";
  const used = [Math.min(rotationUp, rotationDown), Math.max(rotationUp, rotationDown)] as const;
  const worstSine = -largestOver((rotation) => -sineAt(made, rotation), ...used);
  if (worstSine < leastSine) return "nearDeadCentre";
  const worstRatio = largestOver((rotation) => Math.abs(ratioAt(made, rotation)), ...used);
  const [sizeUp, sizeDown] = [Math.abs(rotationUp), Math.abs(rotationDown)];
  return {
    rod: rodOf(candidate.linkage),
    rotationUp,
    rotationDown,
    ratioUp: ratioAt(made, rotationUp),
    ratioLevel: ratioAt(made, 0),
    ratioDown: ratioAt(made, rotationDown),
    worstRatio,
    worstSine,
    steepest: degPerUs(worstRatio * servo.rotation),
    unevenness: Math.abs(sizeUp - sizeDown) / Math.max(sizeUp, sizeDown),
  };
}

/** Sines above 0 keep a rod off its dead centres, where alone the ratio is undefined. */
function ratioAt(made: Drive, rotation: number): number {
  return made.ratioAt(deg(rotation)) ?? 0;
}

function sineAt(made: Drive, rotation: number): number {
  const rods = made.rodsAt(deg(rotation)) ?? [];
  return Math.min(1, ...rods.flatMap((rod) => [rod.sineAtArm, rod.sineAtHorn]));
}

function linkageOf(
  { place }: SizeTask,
  levers: Pick<Pushrod, "arm" | "armAt" | "horn" | "hornAt">,
): Pushrod | BallRod {
  if (place.kind === "plane") return { kind: "pushrod", base: place.base, rise: place.rise, ...levers };
  const { kind: _, ...rule } = place;
  return ballRodFromRule({ ...rule, ...levers });
}

/** The rod that fits at level. */
function rodOf(linkage: Pushrod | BallRod): Mm {
  if (linkage.kind === "ballRod") return mm(length(minus(linkage.hornBall, linkage.armBall)));
  const [armAft, , armUp] = inView(linkage.arm, radians(linkage.armAt));
  const [hornAft, , hornUp] = inView(linkage.horn, radians(linkage.hornAt));
  return mm(hypotOf(linkage.base + hornAft - armAft, linkage.rise + hornUp - armUp));
}
