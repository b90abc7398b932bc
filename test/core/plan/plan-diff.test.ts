import bramblehook from "@hingeline/examples/bramblehook";
import ostrevale from "@hingeline/examples/ostrevale";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Model } from "../../../packages/core/src/model/model.ts";
import { canonicalJson } from "../../../packages/core/src/plan/canonical-json.ts";
import { differs } from "../../../packages/core/src/plan/pair-up.ts";
import type { PlanChange } from "../../../packages/core/src/plan/plan-change.ts";
import { diffPlans } from "../../../packages/core/src/plan/plan-diff.ts";
import type { SetupPlan } from "../../../packages/core/src/plan/setup-plan.ts";
import { verifyAgain } from "../../../packages/core/src/plan/verify-again.ts";
import { deg, pct, s, us } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { fullPlan, sampleChannel, sampleFinding, samplePlan } from "../../support/sample-plan.ts";
import { smallModel, smallMoves, smallSurface } from "../../support/small-model.ts";

const arbitraryPlan = arbitraryModel.map(compile);

/** The same changes the other way round, in an order that does not count. */
function asSet(changes: readonly PlanChange[]): readonly string[] {
  const parts = (change: PlanChange) =>
    change.kind === "computed"
      ? { ...change, parts: change.parts.map((part) => canonicalJson(part)).toSorted() }
      : change.kind === "adds"
        ? { ...change, places: change.places.map((place) => canonicalJson(place)).toSorted() }
        : change;
  return changes.map((change) => canonicalJson(parts(change))).toSorted();
}

function exchanged(change: PlanChange): PlanChange {
  if (change.kind === "computed") return change;
  if (change.kind === "adds")
    return {
      ...change,
      places: change.places.map(({ place, before, after }) => ({ place, before: after, after: before })),
    };
  const { before, after, ...rest } = change;
  return {
    ...rest,
    ...(after === undefined ? {} : { before: after }),
    ...(before === undefined ? {} : { after: before }),
  } as PlanChange;
}

describe("diffPlans", () => {
  test("of a plan with itself is empty, of random plans and of one with every part", () => {
    fc.assert(
      fc.property(arbitraryPlan, (plan) => {
        expect(diffPlans(plan, structuredClone(plan))).toEqual([]);
      }),
      { numRuns: 40 },
    );
    expect(diffPlans(fullPlan, structuredClone(fullPlan))).toEqual([]);
  });

  test("of two plans is empty only where they are the same bytes, and the other way round exchanges the sides", () => {
    let differed = 0;
    fc.assert(
      fc.property(arbitraryPlan, arbitraryPlan, (before, after) => {
        const changes = diffPlans(before, after);
        expect(changes.length > 0).toBe(canonicalJson(before) !== canonicalJson(after));
        expect(asSet(diffPlans(after, before))).toEqual(asSet(changes.map(exchanged)));
        differed += changes.length > 0 ? 1 : 0;
      }),
      { numRuns: 40 },
    );
    expect(differed).toBeGreaterThan(20);
  });

  test("any one number, text or list of a plan that is changed is found", () => {
    const leaves = leavesOf(fullPlan);
    expect(leaves.length).toBeGreaterThan(100);
    for (const path of leaves) {
      const other = structuredClone(fullPlan);
      changeAt(other, path);
      expect(diffPlans(fullPlan, other).length, path.join(".")).toBeGreaterThan(0);
    }
    expect(diffPlans(fullPlan, { ...fullPlan, channels: [...fullPlan.channels, sampleChannel()] })).toEqual([
      { kind: "channel", channel: 5, after: ["flap"] },
    ]);
  });

  test("findings of one code at one place are told apart by their order", () => {
    const [first, second] = [sampleFinding(), sampleFinding({ message: "Another sentence." })];
    const twice = samplePlan({ findings: [first, second] });
    expect(diffPlans(twice, structuredClone(twice))).toEqual([]);
    expect(diffPlans(twice, samplePlan({ findings: [first] }))).toEqual([
      { kind: "finding", code: first.code, at: first.at, before: second },
    ]);
  });

  test("channels that only changed places are told as one computed part", () => {
    const two = samplePlan({ channels: [sampleChannel(), sampleChannel({ channel: 6 })] });
    expect(diffPlans(two, { ...two, channels: two.channels.toReversed() })).toEqual([
      { kind: "computed", parts: [{ part: "channels" }] },
    ]);
  });
});

const small = compile(smallModel());
const changed = (over: Partial<Model>) => diffPlans(small, compile(smallModel(over)));
const entered = (changes: readonly PlanChange[]) => changes.filter(({ kind }) => kind !== "computed");

describe("a change of the model is told in few changes", () => {
  // On the straight bench of 0.1 deg per us, 12 deg is 1620 us, 24 % on 5 us per percent; 13 deg is 1630 us, 26 %.
  test("a moved detent: one change with old and new degrees, percent and pulse", () => {
    const moves = { lever: { ...smallMoves.lever, takeoff: { flap: deg(13) } } };
    expect(entered(changed({ moves }))).toEqual([
      {
        kind: "setting",
        place: { channel: 1, control: "lever", detent: "takeoff", surface: "flap" },
        before: expect.objectContaining({ wantedDeg: 12, percent: 24, pulseUs: 1620, addPercent: 24 }),
        after: expect.objectContaining({ wantedDeg: 13, percent: 26, pulseUs: 1630, addPercent: 26 }),
      },
    ]);
  });

  test("a stop measured again: what is safe, and the limit", () => {
    const surfaces = { flap: smallSurface({ down: us(1790) }) };
    expect(entered(changed({ surfaces })).filter(({ kind }) => kind !== "finding")).toEqual([
      { kind: "safe", channel: 1, before: [1210, 1790], after: [1210, 1780] },
      {
        kind: "value",
        channel: 1,
        value: "highLimit",
        before: { percent: 58, pulseUs: 1790 },
        after: { percent: 56, pulseUs: 1780 },
      },
    ]);
  });

  test("another servo by its label: one change, and the whole channel to verify", () => {
    const plan = compile(smallModel({ surfaces: { flap: smallSurface({}, { label: "F-L-11" }) } }));
    const changes = diffPlans(small, plan);
    expect(entered(changes)).toEqual([{ kind: "label", channel: 1, servo: "flap", after: "F-L-11" }]);
    expect(verifyAgain(changes, plan).channels).toEqual([
      { channel: 1, everything: true, parts: [], settings: [] },
    ]);
  });

  test("a transit: one change", () => {
    expect(entered(changed({ transit: { lever: s(2) } }))).toEqual([
      { kind: "transit", channel: 1, control: "lever", after: 2 },
    ]);
  });

  test("a radio with a finer step: the radio and what is now entered otherwise", () => {
    const radio = { ...smallModel().radio, step: pct(0.5), name: "field set" };
    const [first, ...others] = entered(changed({ radio }));
    expect(first).toMatchObject({
      kind: "radio",
      before: { name: "desk set" },
      after: { name: "field set" },
    });
    expect(others.filter(({ kind }) => kind !== "finding" && kind !== "safe")).toEqual([]);
  });

  test("a new finding stands with its new side only, one that is gone with its old", () => {
    const tooFar = { lever: { ...smallMoves.lever, landing: { flap: deg(29.5) } } };
    const findings = changed({ moves: tooFar }).filter((change) => change.kind === "finding");
    expect(findings).toContainEqual({
      kind: "finding",
      code: "limit-passed",
      at: "moves.lever.landing.flap",
      after: expect.objectContaining({ severity: "error" }),
    });
  });

  test("a value at rest that moves carries what the others add to it along, in one change", () => {
    const moves = { lever: { ...smallMoves.lever, stowed: { flap: deg(1) } } };
    const adds = changed({ moves }).filter((change) => change.kind === "adds");
    expect(adds).toEqual([
      {
        kind: "adds",
        channel: 1,
        places: ["takeoff", "landing"].map((detent) => ({
          place: { channel: 1, control: "lever", detent, surface: "flap" },
          before: detent === "takeoff" ? 24 : 50,
          after: detent === "takeoff" ? 22 : 48,
        })),
      },
    ]);
  });
});

describe("verifyAgain", () => {
  test("of no change asks for nothing", () => {
    expect(verifyAgain([], compile(bramblehook))).toEqual({ channels: [], groups: [] });
  });

  test("of a moved detent asks for that setting of that channel and for the group of its surface", () => {
    const model = bramblehook as Model;
    const changes = diffPlans(compile(model), compile(withMove(model, "flap", "landing", "flaps", deg(40))));
    const { channels, groups } = verifyAgain(changes, compile(model));
    expect(channels.map(({ channel, everything }) => [channel, everything])).toEqual([
      [5, false],
      [6, false],
    ]);
    expect(channels.flatMap(({ settings }) => settings.map(({ detent }) => detent))).toEqual([
      "landing",
      "landing",
    ]);
    expect(groups).toEqual(["flaps"]);
  });

  test("of a moved detent asks for the settings that need this detent too", () => {
    const landing = fullPlan.channels[0]?.settings[0];
    if (landing === undefined) throw new Error("no setting");
    const needs = { ...landing, control: "trim", detent: "on", when: { flap: "landing" } };
    const other = { ...landing, control: "trim", detent: "on", when: { flap: "stowed" } };
    const plan = samplePlan({ channels: [sampleChannel({ settings: [landing, needs, other] })] });
    const { gives: _, ...moved } = landing;
    const before = samplePlan({ channels: [sampleChannel({ settings: [moved, needs, other] })] });
    const [check] = verifyAgain(diffPlans(before, plan), plan).channels;
    expect(check?.settings.map(({ control, when }) => [control, when])).toEqual([
      ["flap", undefined],
      ["trim", { flap: "landing" }],
    ]);
  });

  test("names settings of the plan only, and of another radio every channel in full", () => {
    fc.assert(
      fc.property(arbitraryPlan, arbitraryPlan, (before, after) => {
        const { channels } = verifyAgain(diffPlans(before, after), after);
        for (const { channel, settings } of channels) {
          const plan = after.channels.find((one) => one.channel === channel);
          for (const { channel: _, ...place } of settings)
            expect(plan?.settings).toContainEqual(expect.objectContaining(place));
        }
        if (differs(before.radio, after.radio))
          expect(channels.map(({ channel, everything }) => everything && channel)).toEqual(
            after.channels.map(({ channel }) => channel),
          );
      }),
      { numRuns: 30 },
    );
    expect(compile(ostrevale).channels.length).toBeGreaterThan(3);
  });
});

function withMove(model: Model, control: string, detent: string, surface: string, place: number): Model {
  const moves = structuredClone(model.moves) as Record<string, Record<string, Record<string, number>>>;
  const at = moves[control]?.[detent];
  if (at === undefined || !(surface in at)) throw new Error(`no ${control}.${detent}.${surface}`);
  at[surface] = place;
  return { ...model, moves: moves as unknown as Model["moves"] };
}

function leavesOf(data: unknown, path: readonly string[] = []): readonly string[][] {
  if (typeof data !== "object" || data === null) return [[...path]];
  return Object.entries(data).flatMap(([key, item]) => leavesOf(item, [...path, key]));
}

function changeAt(plan: SetupPlan, path: readonly string[]): void {
  const last = path.at(-1) ?? "";
  const parent = path
    .slice(0, -1)
    .reduce<Record<string, unknown>>((at, key) => at[key] as Record<string, unknown>, plan as never);
  parent[last] = typeof parent[last] === "number" ? Number(parent[last]) + 1 : `${String(parent[last])}x`;
}
