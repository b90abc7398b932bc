import { z } from "zod";
import { expectTypesMatch, type Unbranded } from "../units/expect-types-match.ts";
import type { AsBuilt } from "./as-built.ts";

const asRead = (what: string) =>
  z.exactOptional(z.union([z.number(), z.literal("not measured")])).describe(what);
const halfWidth = (what: string) => z.exactOptional(z.number().min(0)).describe(what);

const setting = z.strictObject({
  control: z.string(),
  detent: z.exactOptional(z.string()),
  stick: z.exactOptional(z.union([z.literal(-1), z.literal(1)])),
  when: z
    .exactOptional(z.record(z.string(), z.string()))
    .describe("detents of other selectors at which this was read"),
  surface: z.string(),
  pulseUs: asRead("pulse read at the receiver, microseconds"),
  deflectionDeg: asRead("deflection read at the surface, degrees from level, positive trailing edge down"),
});

const channel = z.strictObject({
  channel: z.number().int(),
  labels: z
    .exactOptional(z.record(z.string(), z.string()))
    .describe("what the label on each fitted servo reads, by servo; empty where nobody looked"),
  limitLowUs: asRead("pulse of the low limit, microseconds"),
  limitHighUs: asRead("pulse of the high limit, microseconds"),
  sweptLowUs: asRead("lowest pulse seen while every control went to all its ends, microseconds"),
  sweptHighUs: asRead("highest pulse seen while every control went to all its ends, microseconds"),
  neutralUs: asRead("pulse with every control at rest, microseconds"),
  failsafeUs: asRead("pulse with the transmitter off, microseconds"),
  powerUpUs: z
    .exactOptional(z.union([z.number(), z.enum(["none", "not measured"])]))
    .describe("pulse before the receiver hears the transmitter, microseconds; none where it sends none"),
  settings: z.exactOptional(z.array(setting)),
});

/** The as-built document, strict. */
export const asBuiltSchema = z.strictObject({
  format: z.literal("hingeline/as-built"),
  version: z.literal(1),
  model: z.string(),
  plan: z
    .string()
    .regex(/^[0-9a-f]{8,64}$/, "the plan's fingerprint is 8 to 64 hexadecimal digits")
    .describe("fingerprint of the plan that was entered, its first 8 digits or more"),
  by: z.exactOptional(z.string()).describe("who measured"),
  checkedBy: z.exactOptional(z.string()).describe("who checked it"),
  date: z.exactOptional(z.string()),
  instruments: z.exactOptional(
    z.strictObject({
      pulseUs: halfWidth("half-width of the doubt of a pulse as read, microseconds"),
      deflectionDeg: halfWidth("half-width of the doubt of a deflection as read, degrees"),
    }),
  ),
  channels: z.array(channel),
});

expectTypesMatch<Unbranded<AsBuilt>, Unbranded<z.infer<typeof asBuiltSchema>>>(true);
