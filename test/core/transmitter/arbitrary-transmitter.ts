import fc from "fast-check";
import type { TransmitterEdit } from "../../../packages/core/src/transmitter/apply-edits.ts";
import { applyEdits } from "../../../packages/core/src/transmitter/apply-edits.ts";
import { factoryState } from "../../../packages/core/src/transmitter/factory-state.ts";
import type {
  ControlPositions,
  Device,
  EndPoints,
  Transmitter,
} from "../../../packages/core/src/transmitter/transmitter.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

/** The output that everything is set for. */
export const output = 5;

const percent = evenly(-120, 120);
const detents = ["stowed", "takeoff", "landing"] as const;
const when = fc.oneof(
  { weight: 2, arbitrary: fc.constant({}) },
  fc.record({ phase: fc.constantFrom("cruise", "thermal") }),
);

/** A selector "flap", a selector "phase" on which others depend, two sticks. */
const contribution = fc.oneof(
  fc.record({ control: fc.constant("flap"), position: fc.constantFrom(...detents), when, percent }),
  fc.record({
    control: fc.constant("phase"),
    position: fc.constantFrom("cruise", "thermal"),
    when: fc.constant({}),
    percent,
  }),
  fc.record({
    control: fc.constantFrom("pitch", "roll"),
    position: fc.constantFrom(-1 as const, 1 as const),
    when,
    percent,
  }),
);

const points = fc
  .uniqueArray(fc.integer({ min: -100, max: 100 }), { maxLength: 5 })
  .chain((inputs) =>
    fc.tuple(...inputs.map((inputPercent) => percent.map((value) => ({ inputPercent, percent: value })))),
  );

/** Any edit of the output. */
export const arbitraryEdit: fc.Arbitrary<TransmitterEdit> = fc.oneof(
  fc.record({
    output: fc.constant(output),
    set: fc.constantFrom("limitLow" as const, "limitHigh" as const, "shift" as const, "rest" as const),
    percent,
  }),
  fc.record({ output: fc.constant(output), set: fc.constant("failsafe" as const), percent }),
  fc.record({ output: fc.constant(output), set: fc.constant("direction" as const), reversed: fc.boolean() }),
  { weight: 6, arbitrary: contribution.map((one) => ({ output, set: "contribution" as const, ...one })) },
  fc.record({ output: fc.constant(output), set: fc.constant("curve" as const), points }),
  fc.record({
    output: fc.constant(output),
    set: fc.constant("transit" as const),
    control: fc.constantFrom("flap", "phase", "roll"),
    seconds: evenly(0, 5),
  }),
  fc.record({ output: fc.constant(output), set: fc.constant("clear" as const) }),
);

const device: fc.Arbitrary<Device> = fc.oneof(
  fc
    .tuple(evenly(-80, 80), evenly(-80, 80))
    .map(([a, b]): Device => ({ kind: "adds", spanUs: [Math.min(a, b), Math.max(a, b)] })),
  fc
    .tuple(evenly(800, 2200), evenly(800, 2200))
    .map(([a, b]): Device => ({ kind: "stops", pulseUs: [Math.min(a, b), Math.max(a, b)] })),
);

const arbitraryEndPoints: fc.Arbitrary<EndPoints> = fc.constantFrom("clamp", "clampAboutShift", "scale");

/** A memory after any number of edits, with a scale of two spans and any chain of devices. */
export const arbitraryTransmitter: fc.Arbitrary<Transmitter> = fc
  .record({
    endPoints: arbitraryEndPoints,
    below: evenly(400, 600),
    above: evenly(400, 600),
    chain: fc.array(device, { maxLength: 3 }),
    trim: fc.integer({ min: 0, max: 25 }),
    rollRests: fc.constantFrom(-1 as const, 0 as const, 1 as const),
    powerUpUs: fc.option(evenly(900, 2100), { nil: undefined }),
    edits: fc.array(arbitraryEdit, { maxLength: 25 }),
  })
  .map(({ endPoints, below, above, chain, trim, rollRests, powerUpUs, edits }) =>
    applyEdits(
      factoryState({
        scale: {
          name: "desk set",
          centre: us(1510),
          per100: { below: us(below), above: us(above) },
          reach: pct(125),
          step: pct(0.1),
        },
        endPoints,
        outputs: [output],
        trims: { pitch: trim, roll: trim },
        rests: { roll: rollRests },
        chains: { [output]: chain },
        ...(powerUpUs === undefined ? {} : { powerUpUs }),
      }),
      edits,
    ),
  );

/** Anywhere that controls can stand, unknown detents and sticks past their travel among it. */
export const arbitraryPositions: fc.Arbitrary<ControlPositions> = fc.record(
  {
    flap: fc.constantFrom(...detents, "elsewhere"),
    phase: fc.constantFrom("cruise", "thermal", "elsewhere"),
    pitch: evenly(-1.5, 1.5),
    roll: fc.oneof(evenly(-1.5, 1.5), fc.constantFrom(-1, 1)),
    "factory stick": evenly(-1, 1),
  },
  { requiredKeys: [] },
);
