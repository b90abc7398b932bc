import { expect, test } from "vitest";
import { type Bounds, type Draft, walkOrder } from "../../../packages/core/src/compile/order-walk.ts";
import type { Edit } from "../../../packages/core/src/plan/setup-plan.ts";
import { factoryState } from "../../../packages/core/src/transmitter/factory-state.ts";
import { pct, us } from "../../../packages/core/src/units/quantity.ts";

// 5 us a percent. Safe with the linkage on up to 60 percent from the centre, with a bare servo up to 120.
const scale = { name: "desk set", centre: us(1500), per100: us(500), reach: pct(150), step: pct(1) };
const own: Bounds = { safeUs: [1200, 1800], servoUs: [900, 2100], askedUs: [1500, 1500], readingUs: 1 };
const bounds = new Map([5, 6, 7].map((channel) => [channel, own]));
const start = factoryState({ scale, endPoints: "clamp", outputs: [5, 6, 7], travelPercent: 50 });

const step = (supply: "on" | "off", linkage: "on" | "off", ...edits: readonly Edit[]): Draft => ({
  phase: "any",
  text: "Any.",
  supply,
  linkage,
  edits,
});
const high = (channel: number, percent: number): Edit => ({ channel, set: "limitHigh", percent });
const full = (channel: number, addPercent: number): Edit => ({
  channel,
  set: "stick",
  control: "factory stick",
  stick: 1,
  addPercent,
});
const widened = [high(6, 100), full(6, 100)];
const reachesOf = (drafts: readonly Draft[]) => walkOrder(drafts, start, bounds)?.map(({ reach }) => reach);

test("a step lists the reach of what it changed alone, the first step that of every channel", () => {
  const all = [5, 6, 7].map((channel) => ({ channel, pulseUs: [1250, 1750] }));
  const drafts = [
    step("off", "off"),
    step("off", "off", ...widened),
    step("on", "off"),
    step("on", "off", high(5, 50)),
  ];
  expect(reachesOf(drafts)).toEqual([all, [{ channel: 6, pulseUs: [1250, 2000] }], [], []]);
});

test("a channel that comes back to where it was within a step is not listed", () => {
  expect(reachesOf([step("off", "off"), step("off", "off", high(6, 20), high(6, 50))])?.[1]).toEqual([]);
});

test("what was entered with the supply off is held to the bounds as soon as it is on, whatever comes between", () => {
  const between = [step("off", "off"), step("off", "off", high(5, 40))];
  const entered = [step("on", "off"), step("off", "off", ...widened), ...between];
  expect(reachesOf([...entered, step("on", "off")])).toHaveLength(5);
  expect(reachesOf([...entered, step("on", "on")])).toBeUndefined();
  const tooFar = [high(6, 150), full(6, 150)];
  expect(reachesOf([step("on", "off"), step("off", "off", ...tooFar), ...between])).toHaveLength(4);
  expect(reachesOf([step("on", "off"), step("off", "off", ...tooFar), step("on", "off")])).toBeUndefined();
});

test("what a bare servo takes is held to the safe pulses when the linkages go on, even after they were on before", () => {
  const steps = [step("on", "on"), step("on", "off", ...widened), step("on", "off")];
  expect(reachesOf(steps)).toHaveLength(3);
  expect(reachesOf([...steps, step("on", "on")])).toBeUndefined();
  expect(reachesOf([...steps, step("on", "off", high(6, 50)), step("on", "on")])).toHaveLength(5);
});

test("a step whose end is safe is refused where it leaves its bounds on the way", () => {
  const neutral = (percent: number): Edit => ({ channel: 5, set: "neutral", percent });
  const cleared: readonly Edit[] = [{ channel: 5, set: "clear" }, high(5, 80)];
  const only = new Map([[5, own]]);
  const walk = (...edits: readonly Edit[]) =>
    walkOrder([step("off", "on", ...cleared), step("on", "on", ...edits)], start, only);
  expect(walk(neutral(55), neutral(40))).toHaveLength(2);
  expect(walk(neutral(70), neutral(40))).toBeUndefined();
});

// 80 percent are 1900 us, 20 are 1600.
test("a failsafe that is entered while the receiver is off takes the place of the old one only once the receiver is on", () => {
  const failsafe = (percent: number): Edit => ({ channel: 5, set: "failsafe", percent });
  const entered = [step("on", "off", failsafe(80)), step("off", "off", failsafe(20))];
  expect(reachesOf([...entered, step("on", "on")])).toBeUndefined();
  expect(reachesOf([...entered, step("off", "off"), step("on", "on")])).toBeUndefined();
  const heard = [...entered, step("on", "off"), step("on", "on")];
  const ofFive = reachesOf(heard)?.map((reach) => reach.find(({ channel }) => channel === 5)?.pulseUs);
  expect(ofFive).toEqual([[1250, 1900], undefined, [1250, 1750], undefined]);
});
