import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { AsBuilt, AsBuiltChannel } from "../../../packages/core/src/plan/as-built.ts";
import { fingerprintOf, revisionOf } from "../../../packages/core/src/plan/fingerprint.ts";
import type { PlanChannel, SetupPlan } from "../../../packages/core/src/plan/setup-plan.ts";
import type { LineVerdict } from "../../../packages/core/src/plan/verify/verification.ts";
import { verify } from "../../../packages/core/src/plan/verify/verify.ts";
import { sampleChannel, samplePlan } from "../../support/sample-plan.ts";
import { smallModel } from "../../support/small-model.ts";

/** A landing flap that is predicted at 42 degrees with a standard doubt of 0.30, on a bench read with one of 0.26. */
const flap: PlanChannel = sampleChannel({
  settings: [
    {
      control: "lever",
      detent: "landing",
      surface: "flap",
      wanted: { deflectionDeg: 42 },
      exact: { pulseUs: 1235.4, percent: -52.92 },
      enter: { pulseUs: 1235, percent: -53, addPercent: -125, sharePercent: -86 },
      gives: { deflectionDeg: 42, errorDeg: 0, uncertaintyDeg: 0.6 },
    },
  ],
  limits: { low: { percent: -58, pulseUs: 1210 }, high: { percent: 76, pulseUs: 1880 } },
  safeUs: [1208, 1890],
  doubt: {
    control: "lever",
    uncertaintyDeg: 0.6,
    budget: [
      { cause: "meter", standardDeg: 0.24, share: 0.6 },
      { cause: "freePlay", standardDeg: 0.1, share: 0.1 },
      { cause: "tester", standardDeg: 0.15, share: 0.3 },
    ],
  },
});
const radio = { ...samplePlan().radio, per100Us: 500, stepPercent: 1 };
const plan: SetupPlan = samplePlan({ radio, channels: [flap] });

function built(channel: Omit<AsBuiltChannel, "channel">, over: Partial<AsBuilt> = {}): AsBuilt {
  return {
    format: "hingeline/as-built",
    version: 1,
    model: plan.model,
    plan: fingerprintOf(plan),
    channels: [{ channel: 5, ...channel }],
    ...over,
  };
}

const landing = { control: "lever", detent: "landing", surface: "flap" } as const;

function lineOf(
  asBuilt: AsBuilt,
  quantity: LineVerdict["quantity"],
  kind = "setting",
): LineVerdict | undefined {
  return verify(plan, asBuilt).verdicts.find((one) => one.quantity === quantity && one.place.kind === kind);
}

test("a servo with another label than the plan's does not pass, and one at which nobody looked does", () => {
  const labelled = samplePlan({ radio, channels: [{ ...flap, labels: { flap: "F-L-07" } }] });
  const strays = (labels: Readonly<Record<string, string>>) =>
    verify(labelled, {
      ...built({ labels, settings: [{ ...landing, pulseUs: 1235 }] }),
      model: labelled.model,
      plan: fingerprintOf(labelled),
    });
  expect(strays({ flap: "F-L-07" })).toMatchObject({ strays: [], passed: true });
  expect(strays({ flap: "" })).toMatchObject({ strays: [], passed: true });
  expect(strays({ flap: "F-L-11" })).toMatchObject({
    strays: [expect.stringMatching(/flap is labelled F-L-11, the plan was made with F-L-07/)],
    passed: false,
  });
  expect(strays({ tail: "T-1" })).toMatchObject({
    strays: [expect.stringMatching(/no servo tail/)],
    passed: false,
  });
});

test("a deflection agrees within twice the combined standard doubt", () => {
  // The trade's worked example: 42.0 predicted, 41.6 read, standard doubts 0.26 and 0.30: 0.79 is allowed. (common practice, no source)
  const read = (deflectionDeg: number) =>
    lineOf(built({ settings: [{ ...landing, deflectionDeg }] }), "deflection");
  expect(read(41.6)).toMatchObject({ expectedDeg: 42, readDeg: 41.6, outcome: "agrees" });
  expect(read(41.6)).toHaveProperty("withinDeg", expect.closeTo(0.79, 2));
  expect(read(42.79)).toMatchObject({ outcome: "agrees" });
  expect(read(41.2)).toMatchObject({ outcome: "differs", byDeg: expect.closeTo(-0.8, 9) });
});

test("a meter that the file states takes the place of the bench's", () => {
  const asBuilt = built(
    { settings: [{ ...landing, deflectionDeg: 41.6 }] },
    { instruments: { deflectionDeg: 1 } },
  );
  // Rectangular scale and zero of 1 degree each, free play 0.1, prediction 0.30.
  expect(lineOf(asBuilt, "deflection")).toHaveProperty(
    "withinDeg",
    expect.closeTo(2 * Math.sqrt(1 / 3 + 1 / 3 + 0.01 + 0.09), 9),
  );
});

test("a pulse agrees within half a step and 1 us", () => {
  const read = (pulseUs: number) => lineOf(built({ settings: [{ ...landing, pulseUs }] }), "pulse");
  expect(read(1238.5)).toMatchObject({ outcome: "agrees", byUs: 3.5, withinUs: 3.5 });
  expect(read(1231.4)).toMatchObject({ outcome: "differs" });
});

test("a worse pulse meter widens the ground on which nothing can be told", () => {
  const read = (pulseUs: number) =>
    lineOf(built({ settings: [{ ...landing, pulseUs }] }, { instruments: { pulseUs: 3 } }), "pulse");
  expect(read(1236)).toMatchObject({ outcome: "agrees" });
  expect(read(1238)).toMatchObject({ outcome: "cannotTell" });
  expect(read(1240)).toMatchObject({ outcome: "cannotTell" });
  expect(read(1241)).toMatchObject({ outcome: "differs" });
});

test("a sweep ends between the furthest setting and the limit, and a pulse past what is safe is unsafe", () => {
  const read = (sweptLowUs: number) => lineOf(built({ sweptLowUs }), "pulse", "sweptLow");
  expect(read(1225)).toMatchObject({ expectedUs: [1210, 1235], byUs: 0, outcome: "agrees" });
  expect(read(1250)).toMatchObject({ byUs: 15, outcome: "differs" });
  // 1206.9 is nearer to the limit than the tolerance, but past the last safe pulse by more than the meter's doubt.
  expect(read(1206.9)).toMatchObject({ outcome: "differs", unsafe: true });
  expect(read(1207.5)).toMatchObject({ outcome: "agrees" });
});

test("no pulse before the transmitter is heard is right; one outside what is safe is not", () => {
  expect(lineOf(built({ powerUpUs: "none" }), "pulse", "powerUp")).toMatchObject({
    outcome: "agrees",
    silent: true,
  });
  expect(lineOf(built({ powerUpUs: 1500 }), "pulse", "powerUp")).toMatchObject({ outcome: "agrees" });
  expect(lineOf(built({ powerUpUs: 1000 }), "pulse", "powerUp")).toMatchObject({ unsafe: true });
});

test("what is left out, and what reads so, is not measured; nothing measured passes nothing", () => {
  for (const channel of [{}, { neutralUs: "not measured", settings: [landing] } as const]) {
    const { verdicts, causes, passed } = verify(plan, built(channel));
    expect(new Set(verdicts.map(({ outcome }) => outcome))).toEqual(new Set(["notMeasured"]));
    expect([causes, passed]).toEqual([[], false]);
  }
  expect(verify(plan, built({ neutralUs: 1235 }, { channels: [] })).verdicts).toHaveLength(9);
});

test("readings of another plan do not pass, and the first eight digits are enough to name one", () => {
  const asBuilt = built({ settings: [{ ...landing, pulseUs: 1235 }] });
  const digits = revisionOf(fingerprintOf(plan));
  expect(verify(plan, { ...asBuilt, plan: digits })).toMatchObject({
    passed: true,
    revision: { same: true },
  });
  const { passed, causes, revision } = verify(plan, { ...asBuilt, plan: "00000000" });
  expect([passed, causes.map(({ kind }) => kind)]).toEqual([false, ["otherRevision"]]);
  expect(revision).toEqual({ ofPlan: digits, measured: "00000000", same: false });
});

test("what the plan does not have, and what stands twice, is named and does not pass", () => {
  const own = {
    channel: 5,
    settings: [{ ...landing, pulseUs: 1235 }, landing, { ...landing, detent: "tow" }],
  };
  const { strays, passed } = verify(
    plan,
    built({}, { model: "Other", channels: [own, own, { channel: 9 }] }),
  );
  expect(strays).toEqual([
    "The file is of the model Other, the plan of Heronswood tug.",
    "Channel 5, flap: lever at landing stands twice in the file; only the first was used.",
    "Channel 5, flap: lever at tow is not in the plan.",
    "Channel 5 stands twice in the file; only the first was used.",
    "Channel 9 is not in the plan.",
  ]);
  expect(passed).toBe(false);
});

test("two sides are held against their group's tolerance, the doubt of both readings kept clear", () => {
  const twin: PlanChannel = {
    ...flap,
    channel: 6,
    servos: ["flapRight"],
    settings: flap.settings.map((one) => ({ ...one, surface: "flapRight" })),
  };
  const match = {
    group: "flaps",
    withinDeg: 1,
    worstDeg: 0.1,
    between: ["stowed", "landing"],
    surfaces: ["flap", "flapRight"],
    at: 1,
    uncertaintyDeg: 0.7,
  } as const;
  const pair = samplePlan({ radio, channels: [flap, twin], matches: [match] });
  const apart = (left: number, right: number) => {
    const channels = [
      { channel: 5, settings: [{ ...landing, deflectionDeg: left }] },
      { channel: 6, settings: [{ ...landing, surface: "flapRight", deflectionDeg: right }] },
    ];
    return verify(pair, built({}, { plan: fingerprintOf(pair), channels })).verdicts.at(-1);
  };
  // Two standard doubts of 0.26: their difference is known to 0.735, k = 2.
  expect(apart(42.1, 41.9)).toMatchObject({ quantity: "match", outcome: "agrees" });
  expect(apart(42.1, 41.9)).toHaveProperty("doubtDeg", expect.closeTo(0.735, 3));
  expect(apart(42.3, 41.7)).toMatchObject({ outcome: "cannotTell" });
  expect(apart(43, 41.2)).toMatchObject({ outcome: "differs" });
});

test("the value of another output is named by both", () => {
  const other = sampleChannel({ channel: 2, servos: ["aileronLeft"] });
  const two = samplePlan({ radio, channels: [flap, { ...other, settings: other.settings.slice(1) }] });
  const channels = [{ channel: 5, settings: [{ ...landing, pulseUs: 1268.6 }] }];
  const { causes } = verify(two, built({}, { plan: fingerprintOf(two), channels }));
  expect(causes.map(({ message }) => message)).toContain(
    "What was read on channel 5 (flap) is what channel 2 (aileronLeft) should send.",
  );
});

test("a sweep that goes past all that is entered differs, though the limits would still hold it", () => {
  const made = compile(smallModel());
  const [channel] = made.channels;
  if (channel === undefined) throw new Error("the flap has a channel");
  const sweptTo = (sweptHighUs: number) =>
    verify(made, {
      format: "hingeline/as-built",
      version: 1,
      model: made.model,
      plan: fingerprintOf(made),
      channels: [{ channel: channel.channel, sweptHighUs }],
    }).verdicts.find(({ quantity, place }) => quantity === "pulse" && place.kind === "sweptHigh")?.outcome;
  const highest = Math.max(...channel.settings.map(({ enter }) => enter.pulseUs));
  expect(channel.limits.high.pulseUs).toBeGreaterThan(highest + 20);
  expect(sweptTo(highest)).toBe("agrees");
  expect(sweptTo(channel.limits.high.pulseUs)).toBe("differs");
});
