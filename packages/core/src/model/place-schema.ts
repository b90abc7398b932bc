import * as z from "zod";
import { matching, number, strict } from "./schema-parts.ts";

/** Absolute width of the servo signal. */
export const pulse = number("pulse", 100, 5000, "microseconds");
/** Difference of two pulses. */
export const pulseSpan = number("pulse span", 0, 1000, "microseconds");
/** Surface angle from level. */
export const deflection = number("deflection (positive trailing edge down)", -120, 120, "degrees");
const throwMm = number("trailing-edge travel (positive trailing edge down)", -1000, 1000, "millimetres");
const part = number("share of the pulse span from level (+1 the stop down, -1 the stop up)", -1, 1, "");

const atThrow = strict({ kind: z.literal("throw"), mm: throwMm }).meta({ id: "AtThrow" });
const atExtension = strict({
  kind: z.literal("extension"),
  mm: number("extension of a carriage along its track", 0, 1000, "millimetres"),
}).meta({ id: "AtExtension" });
const atPulse = strict({ kind: z.literal("pulse"), us: pulse }).meta({ id: "AtPulse" });
const atPart = strict({ kind: z.literal("part"), part }).meta({ id: "AtPart" });

/** Schema of `Place`. */
export const placeSchema = z
  .union(
    [deflection, z.discriminatedUnion("kind", [atThrow, atExtension, atPulse, atPart])],
    "a deflection in degrees (positive trailing edge down), a throw, an extension, a pulse or a part",
  )
  .meta({ id: "Place" });

/** Holding current of one servo. */
export const current = number("holding current", 0, 500, "amperes");

/** Schema of `Stop`. */
export const stopSchema = z
  .union(
    [
      pulse,
      strict({
        kind: z.literal("stop"),
        pulse,
        reason: z.enum(["contact", "deadCentre", "structure", "servo", "signal", "choice"]),
        current: current.exactOptional(),
      }),
    ],
    "the stop's pulse in microseconds, alone or with its reason",
  )
  .meta({ id: "Stop" });

const readAt = z.union(
  [deflection, z.discriminatedUnion("kind", [atThrow, atExtension])],
  "a deflection in degrees, a throw or an extension",
);

/** Schema of `Reading`. */
export const readingSchema = z
  .union(
    [z.tuple([pulse, readAt]), z.tuple([pulse, readAt, z.enum(["out", "back"])])],
    'a reading [pulse, deflection, throw or extension], with "out" or "back" as a third part where it was read both ways',
  )
  .meta({ id: "Reading" });

/** A calendar date, `2025-06-30`. */
export const date = matching(
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/u,
  "a date as YYYY-MM-DD (ISO 8601)",
);
