import * as z from "zod";
import { linkageSchema } from "./linkage-schema.ts";
import { current, date, deflection, pulse, pulseSpan, readingSchema, stopSchema } from "./place-schema.ts";
import { label, named, namedSome, number, partName, positive, strict, whole } from "./schema-parts.ts";

// The bounds are for plausibility only: they catch metres given for millimetres, not an unwise linkage.

const reserve = positive("deflection that full stick must still reach", 120, "degrees");

const benchSchema = strict({
  up: stopSchema.exactOptional(),
  level: pulse,
  down: stopSchema,
  guard: pulseSpan.exactOptional(),
  readings: z.array(readingSchema, "a list of readings").exactOptional(),
  freeCurrent: current.exactOptional(),
  measured: strict({
    on: date.exactOptional(),
    supply: positive("supply voltage", 100, "volts").exactOptional(),
    temperature: number("temperature", -60, 80, "degrees Celsius").exactOptional(),
  }).exactOptional(),
}).meta({ id: "Bench" });

const servoTypeSchema = strict({
  torque: positive("stall torque", 200, "newton metres").exactOptional(),
  speed: positive("servo speed", 10_000, "degrees per second").exactOptional(),
  rotation: positive("servo rotation", 1, "degrees per microsecond").exactOptional(),
  deadBand: pulseSpan.exactOptional(),
  ratedAt: positive("rated voltage", 100, "volts").exactOptional(),
  stallCurrent: positive("stall current", 500, "amperes").exactOptional(),
  analogue: z.literal(true).exactOptional(),
  accepts: z.tuple([pulse, pulse]).exactOptional(),
}).meta({ id: "ServoType" });

const material = z.enum(["steel", "aluminium", "titanium", "brass", "carbon", "glass", "hardwood"]);

const rodSchema = strict({
  material,
  along: material.exactOptional(),
  diameter: positive("diameter of the rod", 100, "millimetres"),
  bore: positive("inner diameter of a tube", 100, "millimetres").exactOptional(),
  length: positive("free length of the rod", 5000, "millimetres"),
  ends: z.enum(["pinned", "fixedPinned", "fixed", "fixedFree"]).exactOptional(),
}).meta({ id: "Rod" });

/** Schema of `Servo`. */
const servoSchema = strict({
  channel: whole("receiver output", 1, 32),
  yLead: z.literal(true).exactOptional(),
  label: label.exactOptional(),
  type: servoTypeSchema.exactOptional(),
  added: pulseSpan.exactOptional(),
  turns: z.enum(["clockwise", "anticlockwise"]).exactOptional(),
  bench: benchSchema,
  rod: rodSchema.exactOptional(),
  holds: named(partName, positive("force that the part holds", 100_000, "newtons")).exactOptional(),
  linkage: linkageSchema.exactOptional(),
}).meta({ id: "Servo" });

/** Schema of `Surface`; it has either `servo` or `servos`. */
export const surfaceSchema = strict({
  chord: number("chord", 1, 2000, "millimetres").exactOptional(),
  section: number("chord of the whole section", 1, 5000, "millimetres").exactOptional(),
  hingeMoment: strict({
    byIncidence: number("hinge-moment coefficient by incidence", -1, 1, "per degree"),
    byDeflection: number("hinge-moment coefficient by deflection", -1, 1, "per degree"),
  }).exactOptional(),
  incidence: number("largest incidence of the section", -90, 90, "degrees").exactOptional(),
  inertia: positive("moment of inertia about the hinge", 10, "kilogram square metres").exactOptional(),
  span: number("span", 1, 10_000, "millimetres").exactOptional(),
  trailingEdgeRise: number(
    "trailing edge above the chord line at level",
    -500,
    500,
    "millimetres",
  ).exactOptional(),
  throwBy: z.enum(["straight", "vertical"]).exactOptional(),
  hinge: strict({
    sweep: number("hinge sweep", -85, 85, "degrees").exactOptional(),
    tilt: number("hinge tilt", -180, 180, "degrees").exactOptional(),
  }).exactOptional(),
  freePlay: number("free play to either side", 0, 45, "degrees").exactOptional(),
  reserve: strict({ up: reserve.exactOptional(), down: reserve.exactOptional() }).exactOptional(),
  allowed: z.tuple([deflection, deflection]).exactOptional(),
  servo: servoSchema.exactOptional(),
  servos: namedSome(partName, servoSchema).exactOptional(),
})
  .refine((surface) => (surface.servo === undefined) !== (surface.servos === undefined), {
    error: 'either "servo" or "servos"',
    // An unknown key beside it must not hide this.
    when: ({ value }) => typeof value === "object" && value !== null && !Array.isArray(value),
  })
  .meta({ id: "Surface", oneOf: [{ required: ["servo"] }, { required: ["servos"] }] });
