import { z } from "zod";
import { expectTypesMatch, type Unbranded } from "../units/expect-types-match.ts";
import type { SetupPlan } from "./setup-plan.ts";

const receiverOutput = z.int().min(1).max(32).describe("output of the receiver");
const pulse = z.number().describe("pulse, microseconds");
const percent = z.number().describe("percent on the radio's signal scale");
const deflection = z.number().describe("deflection, degrees from level, positive trailing edge down");
const percentPulse = z.strictObject({ percent, pulseUs: pulse });
const sharePercent = z
  .number()
  .describe("position between the channel's low limit (-100) and high limit (+100)");
const position = z.strictObject({ percent, pulseUs: pulse, sharePercent });
const controlState = z
  .record(z.string(), z.union([z.string(), z.number()]))
  .describe(
    "a combination of controls: a detent's name for a selector, a position from -1 to +1 (trim added) for a stick",
  );

const radio = z.strictObject({
  name: z.string(),
  centreUs: pulse,
  per100Us: z
    .union([z.number(), z.strictObject({ below: z.number(), above: z.number() })])
    .describe(
      "pulse span of 100 percent, microseconds; two where the sides below and above the centre differ",
    ),
  reachPercent: z.number().describe("largest percent to either side"),
  stepPercent: z.number().describe("smallest percent that can be entered"),
  endPoints: z.enum(["clamp", "scale"]).describe("whether limits cut the output or stretch it"),
  curvePoints: z.int().min(0).describe("points of an output's curve, 0 where there is none"),
  curveSpacing: z
    .exactOptional(z.enum(["equal", "free"]))
    .describe("whether those points stand equally spaced (absent) or where the plan puts them"),
});

const setting = z.strictObject({
  control: z.string(),
  detent: z.exactOptional(z.string()),
  stick: z.exactOptional(z.union([z.literal(-1), z.literal(1)])),
  when: z
    .exactOptional(z.record(z.string(), z.string()))
    .describe("detents of other selectors that this setting needs"),
  surface: z.string(),
  wanted: z.exactOptional(
    z.strictObject({
      deflectionDeg: deflection,
      throwMm: z.exactOptional(z.number().describe("trailing-edge travel, millimetres")),
      extensionMm: z.exactOptional(z.number().describe("extension of the carriage, millimetres")),
    }),
  ),
  exact: percentPulse.describe("before any rounding"),
  enter: z.strictObject({
    percent,
    pulseUs: pulse,
    addPercent: z
      .number()
      .describe(
        "what to add to the channel's value with this control at rest: percents where limits clamp, shares where they scale",
      ),
    sharePercent,
    commandPercent: z.exactOptional(
      z.number().describe("on the input of the curve: -100 lowest, +100 highest safe deflection"),
    ),
  }),
  gives: z.exactOptional(
    z.strictObject({
      deflectionDeg: deflection,
      errorDeg: z.number().describe("what is given minus what is wanted, degrees"),
      uncertaintyDeg: z.exactOptional(
        z.number().describe("expanded doubt of the deflection, k = 2, degrees"),
      ),
    }),
  ),
  load: z.exactOptional(
    z
      .strictObject({
        airspeedMps: z.number(),
        momentNm: z.number().describe("about the hinge, newton metres"),
        torqueNm: z.number().describe("at the servo, newton metres"),
        share: z.number().describe("of the stall torque at the supply in use"),
        limitMps: z.exactOptional(
          z.number().describe("airspeed at which half of the stall torque would be used"),
        ),
        rodN: z.exactOptional(z.number().describe("force along the rod, newtons")),
      })
      .describe("an estimate of the load"),
  ),
});

const extreme = z.strictObject({
  percent,
  pulseUs: pulse,
  when: controlState,
});

const load = z.strictObject({
  swingHz: z.exactOptional(
    z.number().describe("lowest frequency at which the surface swings on its servo, hertz; no verdict"),
  ),
  worstNm: z.number().describe("estimated torque on the servo, newton metres"),
  heldNm: z.number().describe("torque that the servo holds, newton metres"),
  share: z.number(),
  when: controlState,
  airspeedMps: z.number(),
});

const channel = z.strictObject({
  channel: receiverOutput,
  servos: z.array(z.string()),
  labels: z.exactOptional(z.record(z.string(), z.string())).describe("labels on the servos, by servo"),
  direction: z.enum(["rising", "falling"]).describe("pulse as deflection grows"),
  safeUs: z.tuple([pulse, pulse]).describe("lowest and highest pulse that may be emitted"),
  guardUs: z
    .tuple([z.number(), z.number()])
    .describe("what is kept clear of the lowest and of the highest stop, microseconds"),
  limits: z.strictObject({ low: percentPulse, high: percentPulse }),
  neutral: position.describe("the channel with every control at rest"),
  curve: z
    .exactOptional(
      z.array(z.strictObject({ commandPercent: z.number(), percent, pulseUs: pulse, sharePercent })),
    )
    .describe(
      "points of an output's curve by rising input, for a transmitter that has one; then a position is entered as its commandPercent, and added positions add up in degrees; the procedure enters none",
    ),
  curveWorstDeg: z
    .exactOptional(z.number())
    .describe("furthest that the surface is from what the curve's input asks, degrees"),
  settings: z.array(setting),
  extremes: z.strictObject({ low: extreme, high: extreme }),
  doubt: z.exactOptional(
    z.strictObject({
      control: z.string(),
      detent: z.exactOptional(z.string()),
      stick: z.exactOptional(z.union([z.literal(-1), z.literal(1)])),
      uncertaintyDeg: z.number().describe("expanded doubt, k = 2, degrees"),
      budget: z.array(
        z.strictObject({
          cause: z.string(),
          standardDeg: z.number(),
          share: z.number(),
          assumed: z
            .exactOptional(
              z.union([
                z.strictObject({ deg: z.number() }),
                z.strictObject({ mm: z.number() }),
                z.strictObject({ us: z.number() }),
                z.strictObject({ percent: z.number() }),
              ]),
            )
            .describe(
              "what was taken because the model does not state it: a half-width, or of alignment, jitter and rotation a standard doubt",
            ),
        }),
      ),
    }),
  ),
  summed: z.exactOptional(
    z.strictObject({
      wantedDeg: deflection,
      givesDeg: deflection,
      errorDeg: z.number(),
      pulseUs: pulse,
      when: controlState,
    }),
  ),
  powerUp: z.exactOptional(
    z.strictObject({ percent, pulseUs: pulse, deflectionDeg: z.exactOptional(deflection) }),
  ),
  transits: z.exactOptional(
    z.array(
      z.strictObject({
        control: z.string(),
        from: z.string(),
        to: z.string(),
        seconds: z.number(),
        secondsPerFullScale: z.number().describe("time from -100 to +100 percent at the same speed, seconds"),
        fastestSeconds: z.exactOptional(z.number()),
      }),
    ),
  ),
  load: z.exactOptional(load),
  failsafe: position,
});

const finding = z.strictObject({
  code: z.string(),
  severity: z.enum(["error", "warning", "note"]),
  at: z.string().describe("address in the model"),
  message: z.string(),
  do: z.string(),
  numbers: z.record(z.string(), z.number()),
});

const match = z.strictObject({
  group: z.string(),
  withinDeg: z.number(),
  worstDeg: z.number(),
  between: z.tuple([z.string(), z.string()]),
  surfaces: z.tuple([z.string(), z.string()]),
  at: z.number(),
  uncertaintyDeg: z.number().describe("expanded doubt of the difference, k = 2, degrees"),
});

const gang = z.strictObject({
  surface: z.string(),
  servos: z.array(z.string()),
  points: z.array(z.strictObject({ deflectionDeg: deflection, pulsesUs: z.array(pulse) })),
  worstDeg: z.number().describe("furthest that the servos pull apart, degrees of deflection"),
  fightNm: z.exactOptional(
    z.number().describe("estimated torque with which the servos strain against each other"),
  ),
});

const edit = z.strictObject({
  channel: receiverOutput,
  set: z.enum([
    "clear",
    "limitLow",
    "limitHigh",
    "neutral",
    "direction",
    "detent",
    "stick",
    "transit",
    "failsafe",
  ]),
  percent: z
    .exactOptional(z.number())
    .describe("percent, or share between the limits for a position where limits scale"),
  addPercent: z
    .exactOptional(z.number())
    .describe("what a detent or stick end adds to the value at rest, on the same scale"),
  control: z.exactOptional(z.string()),
  detent: z.exactOptional(z.string()),
  stick: z.exactOptional(z.union([z.literal(-1), z.literal(1)])),
  when: z
    .exactOptional(z.record(z.string(), z.string()))
    .describe("detents of other selectors at which the value holds"),
  seconds: z.exactOptional(z.number()),
});

const channelPulses = z.strictObject({ channel: receiverOutput, pulseUs: z.tuple([pulse, pulse]) });

const step = z.strictObject({
  phase: z.string(),
  supply: z.enum(["on", "off"]).describe("of the receiver"),
  linkage: z
    .enum(["on", "off"])
    .describe("off: the linkages of all channels that are edited are off, or their servos unplugged"),
  text: z.string(),
  edits: z.array(edit),
  expect: z.array(channelPulses).describe("what a pulse meter must show at the end of the step"),
  reach: z
    .array(channelPulses)
    .describe("lowest and highest pulse that can be emitted after the step, where the step changed it"),
});

const control = z
  .discriminatedUnion("kind", [
    z.strictObject({ control: z.string(), kind: z.literal("selector"), detents: z.array(z.string()) }),
    z.strictObject({
      control: z.string(),
      kind: z.literal("stick"),
      rests: z.union([z.literal(-1), z.literal(0), z.literal(1)]).describe("where it stands at rest"),
      trimPercent: z
        .number()
        .describe("what its trim adds to its travel on either side, percent of that side"),
    }),
  ])
  .describe("a selector, at rest at its first detent, or a stick from -1 to +1");

/** The setup plan document, strict. */
export const planSchema = z.strictObject({
  format: z.literal("hingeline/setup-plan"),
  version: z.literal(1),
  model: z.string(),
  radio,
  controls: z.array(control),
  channels: z.array(channel),
  matches: z.array(match),
  gangs: z.array(gang),
  findings: z.array(finding).describe("with one of severity error the plan must not be entered"),
  procedure: z.array(step).describe("the order of entry; empty where the plan has an error"),
  cautions: z.array(z.string()),
});

expectTypesMatch<Unbranded<SetupPlan>, Unbranded<z.infer<typeof planSchema>>>(true);
