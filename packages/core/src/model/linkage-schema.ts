import * as z from "zod";
import type { Chain, Linkage } from "../linkage/linkage.ts";
import { expectTypesMatch, type Unbranded } from "../units/expect-types-match.ts";
import { number, positive, strict } from "./schema-parts.ts";

// The bounds are for plausibility only: they catch metres given for millimetres, not an unwise linkage.

const lever = (what: string) => number(what, 1, 300, "millimetres");
const length = (what: string) => number(what, 1, 5000, "millimetres");
const distance = (what: string) => number(what, -5000, 5000, "millimetres");
const layoutAngle = (what: string) => number(`${what}, from aft (0) through up (90)`, -360, 360, "degrees");
const rod = length("rod, pin to pin").exactOptional();

const point = z
  .tuple(
    [distance("aft"), distance("to starboard"), distance("up")],
    "a point [aft, to starboard, up] in millimetres",
  )
  .meta({ id: "Point" });
const axis = strict({ through: point, along: point }).meta({ id: "Axis" });

const pushrod = strict({
  kind: z.literal("pushrod"),
  arm: lever("shaft to rod pin"),
  horn: lever("hinge to rod pin"),
  base: distance("shaft to hinge, aft"),
  rise: distance("shaft to hinge, up"),
  armAt: layoutAngle("angle of the arm at level"),
  hornAt: layoutAngle("angle of the horn at level"),
  rod,
}).meta({ id: "Pushrod" });

const ballRod = strict({
  kind: z.literal("ballRod"),
  shaft: axis,
  armBall: point,
  hinge: axis,
  hornBall: point,
  rod,
}).meta({ id: "BallRod" });

const bentRod = strict({
  kind: z.literal("bentRod"),
  bend: positive("angle between the wire and its bent tip", 90, "degrees"),
  tipTo: z.enum(["port", "starboard"]),
  skew: number("lean of the wire from square to the hinge", -85, 85, "degrees").exactOptional(),
}).meta({ id: "BentRod" });

const extension = number("extension of the carriage", 0, 2000, "millimetres");
const follow = number("deflection (positive trailing edge down)", -1000, 1000, "degrees");

const cam = z
  .discriminatedUnion("kind", [
    strict({
      kind: z.literal("powers"),
      length: number("extension at which the terms add up", 1, 2000, "millimetres"),
      terms: z
        .array(strict({ deflection: follow, power: number("power", 1, 20, "") }), "a list of terms")
        .min(1, "a list of one term or more"),
    }),
    strict({
      kind: z.literal("table"),
      points: z
        .array(z.tuple([extension, follow]), "a list of [extension, deflection]")
        .min(2, "a list of two points or more"),
    }),
  ])
  .meta({ id: "Cam" });

const track = strict({
  kind: z.literal("track"),
  arm: lever("shaft to rod pin"),
  armAt: layoutAngle("angle of the arm at level"),
  base: distance("shaft to the carriage's pin when fully in, aft"),
  rise: distance("shaft to the carriage's pin when fully in, up"),
  aside: distance("sideways from the arm's pin to the carriage's pin").exactOptional(),
  trackAt: layoutAngle("angle of the way out"),
  travel: number("free length of the track", 1, 2000, "millimetres"),
  rod,
  cam,
}).meta({ id: "Track" });

const torqueRod = strict({ kind: z.literal("torqueRod"), sense: z.enum(["same", "opposite"]) }).meta({
  id: "TorqueRod",
});

const cables = strict({
  kind: z.literal("cables"),
  arm: lever("shaft to each cable pin"),
  horn: lever("hinge to each cable pin"),
  base: length("shaft to hinge"),
  armAft: distance("the arm's pins behind the shaft, towards the hinge").exactOptional(),
  hornAft: distance("the horn's pins behind the hinge line, away from the shaft").exactOptional(),
  crossed: z.boolean("true or false").exactOptional(),
}).meta({ id: "Cables" });

const single = [pushrod, ballRod, bentRod, track, torqueRod, cables] as const;
expectTypesMatch<Unbranded<Exclude<Linkage, Chain>>, Unbranded<z.infer<(typeof single)[number]>>>(true);

const chain = strict({
  kind: z.literal("chain"),
  get links(): z.ZodArray<z.ZodType<Unbranded<Linkage>>> {
    const phrase = "a list of 1 to 10 linkages";
    return z.array(linkageSchema, phrase).min(1, phrase).max(10, phrase);
  },
}).meta({ id: "Chain" });
expectTypesMatch<Unbranded<Chain>, Unbranded<z.infer<typeof chain>>>(true);

/** Schema of `Linkage`. */
export const linkageSchema: z.ZodType<Unbranded<Linkage>> = z
  .discriminatedUnion("kind", [...single, chain])
  .meta({ id: "Linkage" });
