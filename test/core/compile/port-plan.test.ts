import bramblehook from "@hingeline/examples/bramblehook";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { portModel } from "../../../packages/core/src/compile/port-plan.ts";
import type { Bench, Model, Radio, Reading, Servo, Stop } from "../../../packages/core/src/model/model.ts";
import { canonicalJson } from "../../../packages/core/src/plan/canonical-json.ts";
import type { PlanChannel } from "../../../packages/core/src/plan/setup-plan.ts";
import { deg, degPerUs, pct, type Us, us } from "../../../packages/core/src/units/quantity.ts";
import { arbitraryModel, arbitraryRadio } from "../../support/arbitrary-model.ts";
import { smallModel, smallServo, smallSurface } from "../../support/small-model.ts";

const settingKeys = (channels: readonly PlanChannel[]) =>
  channels.flatMap(({ channel, settings }) =>
    settings.map(({ control, detent, stick, when, surface }) =>
      canonicalJson({ channel, control, detent, stick, when, surface }),
    ),
  );

describe("portModel", () => {
  test("there and back gives the same plan, byte for byte", () => {
    fc.assert(
      fc.property(arbitraryModel, arbitraryRadio, (model, radio) => {
        const there = portModel(model, radio);
        const back = portModel(there.model, model.radio);
        expect(canonicalJson(back.plan)).toBe(canonicalJson(compile(model)));
        expect(canonicalJson(back.before)).toBe(canonicalJson(there.plan));
      }),
      { numRuns: 12 },
    );
  });

  test("carries the pulses: what both plans have is the same exact pulse", () => {
    fc.assert(
      fc.property(arbitraryModel, arbitraryRadio, (model, radio) => {
        const { before, plan } = portModel({ ...model, ...withGuard(model) }, radio);
        const exact = new Map(before.channels.map((channel) => [channel.channel, channel.settings]));
        for (const { channel, settings } of plan.channels)
          for (const setting of settings) {
            const old = exact
              .get(channel)
              ?.find((one) => settingKeys([at(channel, one)])[0] === settingKeys([at(channel, setting)])[0]);
            // A value of one plan only: the other radio could not give it.
            if (old !== undefined) expect(setting.exact.pulseUs).toBeCloseTo(old.exact.pulseUs, 9);
          }
      }),
      { numRuns: 25 },
    );
  });

  // Retyping 40, 72 and -53 %, set on 5 us per percent about 1500 us, on 4 us about 1520 us: 15.3, 4.9 and 38.5 deg in place of
  // 13.8, -0.1 and 42.0. Worked by hand from the bench of the tow plane's left flap.
  test("says what the old percents would give if they were typed into the other radio", () => {
    const model = byReadings(bramblehook as Model);
    const radio = { ...model.radio, name: "field set", centre: us(1520), per100: us(400) } as Radio;
    const rows = portModel(model, radio).values.flatMap(({ channel, what, before, retyped }) =>
      channel === 5 && typeof what === "object" && what.detent !== "tow"
        ? [[what.detent, before?.percent, retyped?.pulseUs, retyped?.deflectionDeg] as const]
        : [],
    );
    expect(rows.map(([detent, percent, pulseUs]) => [detent, percent, pulseUs])).toEqual([
      ["level", 72, 1808],
      ["takeoff", 40, 1680],
      ["landing", -53, 1308],
    ]);
    const given = rows.map(([, , , deflectionDeg]) => deflectionDeg ?? Number.NaN);
    // The fitted linkage and the hand's reading of the bench agree within the scatter of the readings.
    for (const [index, expected] of [4.9, 15.3, 38.5].entries())
      expect(Math.abs((given[index] ?? Number.NaN) - expected)).toBeLessThan(0.25);
  });

  test("on a radio whose limits scale, positions are shares, and nothing is said of retyping", () => {
    const radio: Radio = { ...smallModel().radio, endPoints: "scale" };
    const { values, plan } = portModel(smallModel(), radio);
    const landing = values.find(({ what }) => typeof what === "object" && what.detent === "landing");
    const setting = plan.channels[0]?.settings.find(({ detent }) => detent === "landing");
    expect(landing?.before?.percent).toBe(50);
    expect(landing?.after?.percent).toBe(setting?.enter.sharePercent);
    expect(values.every(({ retyped }) => retyped === undefined)).toBe(true);
  });
});

// The small bench needs 1500, 1620 and 1750 us; the radio gives 5 us per percent about 1500 us.
const onReach = (reach: number, model = smallModel()) =>
  portModel(model, { ...model.radio, reach: pct(reach) });

describe("what the other radio cannot give", () => {
  test("names each setting with its pulse and the end of the radio", () => {
    expect(onReach(20).unreachable).toEqual([
      {
        place: { channel: 1, control: "lever", detent: "takeoff", surface: "flap" },
        pulseUs: 1620,
        kind: "past-reach",
        reachUs: 1600,
      },
      {
        place: { channel: 1, control: "lever", detent: "landing", surface: "flap" },
        pulseUs: 1750,
        kind: "past-reach",
        reachUs: 1600,
      },
    ]);
  });

  test("a channel that is lost takes the settings with it that could be sent", () => {
    const moves = {
      lever: { stowed: { flap: deg(25) }, takeoff: { flap: deg(12) }, landing: { flap: deg(0) } },
    };
    const kinds = onReach(30, smallModel({ moves })).unreachable.map(({ kind, place }) => [
      place.detent,
      kind,
    ]);
    expect(kinds).toEqual([
      ["stowed", "past-reach"],
      ["takeoff", "with-channel"],
      ["landing", "with-channel"],
    ]);
  });

  test("more reach helps, and a shift of the arm only where all the travel then fits", () => {
    expect(onReach(20).remedies).toEqual([{ kind: "reach", channel: 1, reachPercent: 50 }]);
    const model = smallModel({
      surfaces: { flap: { servo: smallServo({ type: { rotation: degPerUs(0.09) } }) } },
    });
    expect(onReach(30, model).remedies).toEqual([
      { kind: "shift", channel: 1, byUs: -100, shaftDeg: -9 },
      { kind: "reach", channel: 1, reachPercent: 50 },
    ]);
    // 30.5 % ends at 1652.5 us, 97.5 us short: a whole microsecond more, so that the end is not just met.
    expect(onReach(30.5).remedies[0]).toEqual({ kind: "shift", channel: 1, byUs: -98 });
  });

  test("a finer step helps where no step lies inside the safe pulses", () => {
    const model = smallModel({
      radio: { ...smallModel().radio, step: pct(0.1) },
      surfaces: { flap: smallSurface({ up: us(1490), down: us(1525), guard: us(2) }) },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(1) }, landing: { flap: deg(2) } } },
    });
    const { unreachable, remedies } = portModel(model, { ...model.radio, step: pct(20) });
    expect(unreachable.map(({ kind, place }) => [kind, place.detent])).toEqual([
      ["no-step", "stowed"],
      ["no-step", "takeoff"],
      ["no-step", "landing"],
    ]);
    expect(remedies).toEqual([{ kind: "step", channel: 1, stepPercent: 1 }]);
  });

  test("each remedy, applied to random models, leaves nothing of its channel out of reach", () => {
    let applied = 0;
    fc.assert(
      fc.property(
        arbitraryModel,
        fc.integer({ min: 5, max: 60 }),
        fc.constantFrom(0.5, 5, 20),
        (model, reach, step) => {
          const radio = { ...model.radio, reach: pct(reach), step: pct(step) } as Radio;
          const { remedies, unreachable } = portModel(model, radio);
          const lost = unreachable.map(({ place }) => canonicalJson(place));
          for (const remedy of remedies) {
            const [fixed, better] = applyRemedy(model, radio, remedy);
            const left = portModel(fixed, better).unreachable.filter(
              ({ place, kind }) =>
                place.channel === remedy.channel &&
                lost.includes(canonicalJson(place)) &&
                (kind === "past-reach" || remedy.kind === "step"),
            );
            expect(left).toEqual([]);
            applied += 1;
          }
        },
      ),
      { numRuns: 20 },
    );
    expect(applied).toBeGreaterThan(5);
  });
});

type Remedies = ReturnType<typeof portModel>["remedies"];

function applyRemedy(model: Model, radio: Radio, remedy: Remedies[number]): readonly [Model, Radio] {
  if (remedy.kind === "reach") return [model, { ...radio, reach: pct(remedy.reachPercent) }];
  if (remedy.kind === "step") return [model, { ...radio, step: pct(remedy.stepPercent) }];
  const surfaces = Object.entries(model.surfaces).map(([name, surface]) => {
    const { servo } = surface;
    if (servo?.channel !== remedy.channel) return [name, surface] as const;
    return [name, { ...surface, servo: shifted(servo, remedy.byUs) }] as const;
  });
  return [{ ...model, surfaces: Object.fromEntries(surfaces) }, radio];
}

/** The same servo with its arm moved on the shaft: every pulse of its bench is another. */
function shifted(servo: Servo, byUs: number): Servo {
  const move = (pulse: Us) => us(pulse + byUs);
  const stop = (one: Stop): Stop =>
    typeof one === "number" ? move(one) : { ...one, pulse: move(one.pulse) };
  const { up, level, down, readings, ...rest } = servo.bench;
  const bench: Bench = {
    ...rest,
    ...(up === undefined ? {} : { up: stop(up) }),
    level: move(level),
    down: stop(down),
    ...(readings === undefined
      ? {}
      : { readings: readings.map(([pulse, ...at]) => [move(pulse), ...at] as unknown as Reading) }),
  };
  return { ...servo, bench };
}

/** The model with its flaps as their readings say, without their linkages: so the example was worked. */
function byReadings(model: Model): Model {
  const surfaces = Object.entries(model.surfaces).map(([name, { servo, ...surface }]) => {
    if (servo === undefined) return [name, surface];
    const { linkage: _, ...bare } = servo;
    return [name, { ...surface, servo: bare }];
  });
  return { ...model, surfaces: Object.fromEntries(surfaces) };
}

/** Benches with a stated guard: one computed would follow the radio's step, and with it what gives way. */
function withGuard({ surfaces }: Model): Pick<Model, "surfaces"> {
  return {
    surfaces: Object.fromEntries(
      Object.entries(surfaces).map(([name, surface]) => {
        const { servo } = surface;
        if (servo === undefined) return [name, surface];
        return [name, { ...surface, servo: { ...servo, bench: { ...servo.bench, guard: us(6) } } }];
      }),
    ),
  };
}

function at(channel: number, setting: PlanChannel["settings"][number]): PlanChannel {
  return { channel, settings: [setting] } as unknown as PlanChannel;
}
