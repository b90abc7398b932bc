import {
  deg,
  mm,
  model,
  type Percent,
  PlanRefused,
  pct,
  per,
  plan,
  selector,
  stick,
  type Us,
  us,
} from "@hingeline/dsl";
import { expect, expectTypeOf, test } from "vitest";

const readings = [1200, 1350, 1500, 1650, 1800].map(
  (pulse) => [us(pulse), deg((pulse - 1500) / 10)] as const,
);
const bench = { up: us(1200), level: us(1500), down: us(1800), guard: us(10), readings };

const glider = model("Wrenfield 20", {
  radio: {
    name: "desk set",
    centre: us(1500),
    per100: us(500),
    reach: pct(125),
    step: pct(0.5),
    endPoints: "clamp",
    curvePoints: 0,
  },
  surfaces: {
    flap: { chord: mm(50), servo: { channel: 5, bench } },
    elevator: { servo: { channel: 2, bench } },
  },
  controls: { flap: selector("stowed", "landing"), pitch: stick() },
  moves: { flap: { stowed: {}, landing: { flap: deg(20.2) } }, pitch: { elevator: [deg(-15), deg(12)] } },
});

test("plan(model).at answers by the model's names: percent, pulse and what the surface does", () => {
  const landing = plan(glider).at("flap", "landing", "flap");
  // 20.2 degrees is 202 us from level on this straight response: 40.4 %, 40.5 on a grid of halves, 202.5 us. The limits stand at
  // -58 and +58 %, of which it is 69.8 %, 70 on the grid.
  expect(landing).toEqual({
    percent: 40.5,
    pulse: 1702.5,
    add: 40.5,
    share: 70,
    deflection: expect.closeTo(20.25, 9),
  });
  expect(plan(glider).at("pitch", -1, "elevator").percent).toBe(-30);
});

test("a control that does not move a surface leaves it at rest", () => {
  expect(plan(glider).at("pitch", 1, "flap")).toEqual({ percent: 0, pulse: 1500, add: 0, share: 0 });
});

test("the percent carries the name of its radio, the positions those of the control", () => {
  const setup = plan(glider);
  expectTypeOf(setup.at("flap", "landing", "flap").percent).toEqualTypeOf<Percent<"desk set">>();
  expectTypeOf(setup.at("flap", "landing", "flap").pulse).toEqualTypeOf<Us>();
  // @ts-expect-error a percent of one radio is not another's
  const wrong: Percent<"field set"> = setup.at("flap", "landing", "flap").percent;
  // @ts-expect-error no such detent
  expect(() => setup.at("flap", "takeoff", "flap")).toThrow(
    '"flap" has no position "takeoff"; it has stowed, landing',
  );
  // @ts-expect-error no such control
  expect(() => setup.at("roll", 1, "flap")).toThrow('no control "roll"; it has flap, pitch');
  // @ts-expect-error no such surface
  expect(() => setup.at("flap", "landing", "flop")).toThrow('no servo "flop"');
  // @ts-expect-error a stick has ends, no detents
  expect(() => setup.at("pitch", "landing", "elevator")).toThrow("no position");
  expect(wrong).toBe(40.5);
});

const phased = model("Wrenfield 31", {
  radio: glider.radio,
  surfaces: {
    flap: { servo: { channel: 5, bench } },
    rudder: { servos: { upper: { channel: 3, bench }, lower: { channel: 4, bench } } },
  },
  controls: { phase: selector("cruise", "slow"), roll: stick(), yaw: stick() },
  moves: {
    phase: { cruise: {}, slow: { flap: deg(5) } },
    roll: per("phase", { cruise: { flap: [deg(-10), deg(10)] }, slow: { flap: [deg(-4), deg(4)] } }),
    yaw: { rudder: [deg(-12), deg(12)] },
  },
});

test("what depends on a selector is asked at that selector's rest, or at the detent that is named", () => {
  const setup = plan(phased);
  expect(setup.at("roll", 1, "flap").pulse).toBe(1600);
  expect(setup.at("roll", 1, "flap", { when: { phase: "cruise" } }).pulse).toBe(1600);
  expect(setup.at("phase", "slow", "flap").pulse).toBe(1550);
  // At slow both the phase and the stick move the flap: the plan has no value for their sum.
  expect(() => setup.at("roll", 1, "flap", { when: { phase: "slow" } })).toThrow("their sum is no setting");
  // @ts-expect-error no such detent
  expect(() => setup.at("roll", 1, "flap", { when: { phase: "slo" } })).toThrow(
    '"phase" has no position "slo"',
  );
  // @ts-expect-error a stick has no detents to stand at
  expect(() => setup.at("phase", "slow", "flap", { when: { roll: "end" } })).toThrow("no position");
});

test("of several servos one is named, never the first taken", () => {
  const setup = plan(phased);
  expect(setup.at("yaw", 1, "rudder", { servo: "lower" }).pulse).toBe(1620);
  expect(() => setup.at("yaw", 1, "rudder")).toThrow("several servos, rudder.upper, rudder.lower: name one");
});

test("plan(model) throws for a model that no parser would take, and names what is out of its range", () => {
  const { elevator } = glider.surfaces;
  const spoilt = { ...elevator, servo: { channel: 2, bench: { ...bench, guard: us(-50) } } };
  expect(() => plan({ ...glider, surfaces: { ...glider.surfaces, elevator: spoilt } })).toThrow(
    /surfaces\.elevator\.servo\.bench\.guard: Expected .*got -50/,
  );
});

test("plan(model) throws once, with every error, where the plan must not be entered", () => {
  const { flap, elevator } = glider.surfaces;
  const spoilt = {
    ...glider,
    surfaces: { elevator, flap: { ...flap, allowed: [deg(0), deg(10)] } },
    failsafe: { flap: "nowhere" },
  } as const;
  expect(() => plan(spoilt)).toThrow(PlanRefused);
  expect(() => plan(spoilt)).toThrow(/2 error\(s\)[\s\S]*failsafe\.flap[\s\S]*moves\.flap\.landing\.flap/);
});
