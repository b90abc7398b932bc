import * as z from "zod";
import { expectTypesMatch, type Unbranded } from "../units/expect-types-match.ts";
import {
  airspeedSchema,
  controlSchema,
  controlStateSchema,
  groupSchema,
  instrumentsSchema,
  movesSchema,
} from "./controls-schema.ts";
import type { Model } from "./model.ts";
import { pulse } from "./place-schema.ts";
import {
  anyName,
  controlName,
  label,
  named,
  namedSome,
  names,
  number,
  partName,
  positive,
  strict,
  whole,
} from "./schema-parts.ts";
import { surfaceSchema } from "./surface-schema.ts";

const per100 = number("pulse span of 100 percent", 50, 2500, "microseconds");

const temperature = number("temperature", -60, 80, "degrees Celsius");

const radioSchema = strict({
  name: label,
  centre: pulse,
  per100: z.union(
    [per100, strict({ below: per100, above: per100 })],
    "the pulse span of 100 percent in microseconds, or one below and one above the centre",
  ),
  reach: positive("largest percent", 200, "percent"),
  step: positive("smallest percent", 100, "percent"),
  endPoints: z.enum(["clamp", "scale"]),
  leastLimit: positive("least percent of a limit", 200, "percent").exactOptional(),
  curvePoints: whole("points of an output's curve", 0, 100),
  curveSpacing: z.enum(["equal", "free"]).exactOptional(),
  frame: positive("time from one pulse to the next", 1, "seconds").exactOptional(),
  powerUp: pulse.exactOptional(),
}).meta({ id: "Radio" });

/** Schema of `Model`: strict, plain data, no transforms and no defaults. */
export const modelSchema = strict({
  format: z.literal("hingeline/model"),
  version: z.literal(1),
  name: label,
  radio: radioSchema,
  instruments: instrumentsSchema.exactOptional(),
  surfaces: namedSome(partName, surfaceSchema),
  groups: named(partName, groupSchema).exactOptional(),
  controls: namedSome(controlName, controlSchema),
  moves: named(controlName, movesSchema),
  yields: named(anyName, names(controlName, 1)).exactOptional(),
  transit: named(controlName, number("transit", 0, 600, "seconds")).exactOptional(),
  airspeed: airspeedSchema.exactOptional(),
  field: strict({
    height: number("height of the field", -500, 9000, "metres"),
    temperature: temperature.exactOptional(),
  }).exactOptional(),
  temperatures: z.tuple([temperature, temperature]).exactOptional(),
  supply: strict({
    voltage: positive("supply voltage", 100, "volts").exactOptional(),
    current: positive("current that the supply gives", 1000, "amperes").exactOptional(),
  }).exactOptional(),
  failsafe: controlStateSchema.exactOptional(),
});

expectTypesMatch<Unbranded<Model>, Unbranded<z.infer<typeof modelSchema>>>(true);
