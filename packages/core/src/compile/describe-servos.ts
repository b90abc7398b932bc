import { type Drawing, type Drive, isLinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Model, Stop, StopReason } from "../model/model.ts";
import { angleOfSine } from "../numeric/angle.ts";
import type { Response } from "../response/response.ts";
import { expand } from "../uncertainty/expand.ts";
import { deg } from "../units/quantity.ts";
import { standardAt } from "./position-doubt.ts";
import { resolveNames } from "./resolve-names.ts";
import { type Rig, rigServos } from "./rig-servos.ts";
import { sortKeys } from "./sort-keys.ts";

/** One servo as measured: what a picture of it needs beside the plan. Deflections are positive trailing edge down. */
export interface ServoDescription {
  /** Its name in the plan. */
  readonly id: string;
  readonly surface: string;
  readonly channel: number;
  readonly levelUs: number;
  /** Whether deflection grows with pulse. */
  readonly rising: boolean;
  /** The stops as measured, lowest and highest pulse, and why each is the last pulse, where the bench says so. */
  readonly stopsUs: readonly [number, number];
  readonly reasons: readonly [StopReason | undefined, StopReason | undefined];
  /** Guard inside the lowest and the highest stop. */
  readonly guardUs: readonly [number, number];
  /** What may be emitted: inside the guards and the deflections that the builder allows. */
  readonly safeUs: readonly [number, number];
  /** Absent on a bench that knows no degrees. */
  readonly measured?: MeasuredResponse;
  /** Absent without a linkage, or where it has no level position. */
  readonly linkage?: LinkagePicture;
}

/** Pulse and deflection of one servo, with the points that it rests on and its doubt. */
export interface MeasuredResponse {
  readonly response: Response;
  /** What the response goes through, by rising pulse, with the expanded doubt of each, k = 2. */
  readonly points: readonly {
    readonly pulseUs: number;
    readonly deflectionDeg: number;
    readonly uncertaintyDeg: number;
  }[];
  /** Pulse -> expanded doubt of the deflection that it gives, k = 2; undefined outside the response. */
  uncertaintyAt(pulseUs: number): number | undefined;
}

/** A linkage as declared, for drawing: how it stands at each deflection, positive trailing edge down. */
export interface LinkagePicture {
  /** Deflection -> how the linkage stands; undefined where it does not reach. */
  standAt(deflectionDeg: number): LinkageStand | undefined;
}

/** How a linkage stands at one deflection. */
export interface LinkageStand {
  readonly rotationDeg: number;
  /** Degrees of deflection per degree of rotation; absent at a dead centre. */
  readonly ratio?: number;
  /** For each rod how far it stands from dead centre at the arm and at the horn, 0 to 90 degrees. */
  readonly rods: readonly { readonly armDeg: number; readonly hornDeg: number }[];
  readonly drawing: Drawing;
}

/** Every servo of a model in the order of its surfaces; those of a surface whose bench contradicts itself are left out. */
export function describeServos(declared: Model): readonly ServoDescription[] {
  const model = sortKeys(declared);
  // What is wrong with the model is in its plan already.
  const report = () => undefined;
  return resolveNames(model, report).surfaces.flatMap((named) =>
    (rigServos(named, model.radio, model.instruments, report) ?? []).map(describeServo),
  );
}

function describeServo(rig: Rig): ServoDescription {
  const { named, bench, safeUs, response, points = [] } = rig;
  const { servo } = named;
  const [up, down] = [reasonOf(servo.bench.up), reasonOf(servo.bench.down)];
  const made = servo.linkage && drive(servo.linkage);
  const uncertaintyDeg = expand(rig.readingDoubt.standard);
  return {
    id: named.id,
    surface: named.surface,
    channel: servo.channel,
    levelUs: bench.levelUs,
    rising: bench.rising,
    stopsUs: bench.stopsUs,
    reasons: bench.rising ? [up, down] : [down, up],
    guardUs: bench.guardUs,
    safeUs,
    ...(response === undefined
      ? {}
      : {
          measured: {
            response,
            points: points.map(({ pulseUs, deflectionDeg }) => ({ pulseUs, deflectionDeg, uncertaintyDeg })),
            uncertaintyAt: (pulseUs) => {
              const standard = standardAt(rig, pulseUs);
              return standard === undefined ? undefined : expand(standard);
            },
          },
        }),
    ...(made === undefined || isLinkageProblem(made) ? {} : { linkage: pictureOf(made) }),
  };
}

function pictureOf(made: Drive): LinkagePicture {
  return {
    standAt: (deflectionDeg) => {
      const rotation = made.rotationAt(deg(deflectionDeg));
      const drawing = rotation === undefined ? undefined : made.drawingAt(rotation);
      if (rotation === undefined || drawing === undefined) return undefined;
      const ratio = made.ratioAt(rotation);
      const rods = made.rodsAt(rotation) ?? [];
      return {
        rotationDeg: rotation,
        ...(ratio === undefined ? {} : { ratio }),
        rods: rods.map(({ sineAtArm, sineAtHorn }) => ({
          armDeg: angleOfSine(sineAtArm),
          hornDeg: angleOfSine(sineAtHorn),
        })),
        drawing,
      };
    },
  };
}

function reasonOf(stop: Stop | undefined): StopReason | undefined {
  return typeof stop === "object" ? stop.reason : undefined;
}
