import * as z from "zod";
import { placeSchema } from "./place-schema.ts";
import {
  anyName,
  anyNamePattern,
  controlName,
  named,
  namedSome,
  names,
  number,
  partName,
  positive,
  strict,
} from "./schema-parts.ts";

const selectorSchema = strict({ kind: z.literal("selector"), detents: names(anyName, 1) }).meta({
  id: "Selector",
});

const stickSchema = strict({
  kind: z.literal("stick"),
  trim: number("trim", 0, 100, "percent of the stick's travel to one side").exactOptional(),
  rests: z.literal([-1, 0, 1]).exactOptional(),
}).meta({ id: "Stick" });

/** Schema of `Control`. */
export const controlSchema = z.discriminatedUnion("kind", [selectorSchema, stickSchema]);

/** Schema of `Group`. */
export const groupSchema = z
  .discriminatedUnion("kind", [
    strict({ kind: z.literal("together"), surfaces: names(partName, 1) }),
    strict({
      kind: z.literal("matched"),
      surfaces: names(partName, 2),
      within: positive("difference allowed within the group", 45, "degrees"),
    }),
  ])
  .meta({ id: "Group" });

const selectorMoves = named(anyName, named(partName, placeSchema)).meta({ id: "SelectorMoves" });
const stickMoves = named(partName, z.tuple([placeSchema, placeSchema])).meta({ id: "StickMoves" });
const eitherMoves = z.union(
  [selectorMoves, stickMoves],
  "for each detent its surfaces and places, or for each surface its places at stick -1 and +1",
);

/** Schema of `Moves`. The first alternative is the one with a selector's name under `per`. */
export const movesSchema = z
  .union(
    [strict({ per: controlName, cases: namedSome(anyName, eitherMoves) }), selectorMoves, stickMoves],
    "for each detent its surfaces and places, or for each surface its places at stick -1 and +1",
  )
  .meta({ id: "Moves" });

/** Schema of `ControlState`. */
export const controlStateSchema = named(
  controlName,
  z.union(
    [anyName, number("stick position", -1, 1, "")],
    "a detent's name, or a stick's position from -1 to +1",
  ),
);

const airspeed = positive("airspeed", 350, "metres per second");
/** Schema of `Airspeed`. */
export const airspeedSchema = z
  .object({ otherwise: airspeed }, "an object")
  .catchall(
    z.union([airspeed, named(anyName, airspeed)], "an airspeed in metres per second, or one for each detent"),
  )
  .refine((speeds) => Object.keys(speeds).every((key) => anyNamePattern.test(key)), "the names of controls")
  .meta({ propertyNames: { pattern: anyNamePattern.source } });

/** Schema of `Instruments`. */
export const instrumentsSchema = strict({
  pulse: number("half-width of a pulse's doubt", 0, 100, "microseconds").exactOptional(),
  deflection: number("half-width of a deflection's doubt", 0, 20, "degrees").exactOptional(),
  throw: number("half-width of a throw's doubt", 0, 20, "millimetres").exactOptional(),
  meter: z.enum(["square", "alongFlight", "gravity"]).exactOptional(),
});
