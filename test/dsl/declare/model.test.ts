import { parseModel } from "@hingeline/core/schema";
import {
  atPart,
  atPulse,
  atThrow,
  ballRod,
  bentRod,
  cables,
  chain,
  deg,
  matched,
  mm,
  model,
  pct,
  per,
  pushrod,
  selector,
  stick,
  stopAt,
  together,
  torqueRod,
  track,
  us,
} from "@hingeline/dsl";
import { describe, expect, test } from "vitest";
import tug from "./sample.ts";

describe("model", () => {
  test("returns plain JSON data that is itself again after JSON", () => {
    expect(JSON.parse(JSON.stringify(tug))).toEqual(tug);
    expect(tug).toMatchObject({ format: "hingeline/model", version: 1, name: "Heronswood tug" });
  });

  test("returns what the schema takes", () => {
    expect(parseModel(tug)).toEqual({ model: tug });
  });

  test("freezes everything in it, and nothing of what it was given", () => {
    const bench = { level: us(1500), down: us(1900) };
    const made = model("m", { ...smallest, surfaces: { flap: { servo: { channel: 1, bench } } } });
    expect(Object.isFrozen(bench)).toBe(false);
    const left: unknown[] = [made];
    let objects = 0;
    for (let value = left.pop(); value !== undefined; value = left.pop()) {
      if (typeof value !== "object" || value === null) continue;
      objects += 1;
      expect(Object.isFrozen(value)).toBe(true);
      left.push(...Object.values(value));
    }
    expect(objects).toBeGreaterThan(8);
  });

  test("writes -0 as the 0 that JSON has, and a shared part once for each place", () => {
    const servo = { channel: 1, bench: { level: us(1500), down: us(1900), guard: us(-0) } };
    const made = model("m", { ...smallest, surfaces: { flap: { servo }, other: { servo } } });
    expect(Object.is(made.surfaces.flap.servo?.bench.guard, 0)).toBe(true);
    expect(made.surfaces.flap.servo).not.toBe(made.surfaces.other.servo);
  });

  const smallest = {
    radio: {
      name: "desk set",
      centre: us(1500),
      per100: us(500),
      reach: pct(100),
      step: pct(1),
      endPoints: "clamp",
      curvePoints: 0,
    },
    controls: { roll: stick() },
    moves: {},
  } as const;
});

describe("the builders return the model's own data", () => {
  test("for controls", () => {
    expect(selector("stowed", "landing")).toEqual({ kind: "selector", detents: ["stowed", "landing"] });
    expect(stick()).toEqual({ kind: "stick" });
    expect(stick({ trim: pct(10), rests: -1 })).toEqual({ kind: "stick", trim: 10, rests: -1 });
  });

  test("for groups and moves", () => {
    expect(together(["a", "b"])).toEqual({ kind: "together", surfaces: ["a", "b"] });
    expect(matched(["a", "b"], { within: deg(1) })).toEqual({
      kind: "matched",
      surfaces: ["a", "b"],
      within: 1,
    });
    expect(matched(["a"], { within: deg(1), withn: 2 } as { within: ReturnType<typeof deg> })).toHaveProperty(
      "withn",
      2,
    );
    expect(per("phase", { cruise: {}, thermal: { a: [deg(-3), deg(3)] } })).toEqual({
      per: "phase",
      cases: { cruise: {}, thermal: { a: [-3, 3] } },
    });
  });

  test("for places and stops", () => {
    expect(atThrow(mm(29))).toEqual({ kind: "throw", mm: 29 });
    expect(atPulse(us(1600))).toEqual({ kind: "pulse", us: 1600 });
    expect(atPart(-0.5)).toEqual({ kind: "part", part: -0.5 });
    expect(stopAt(us(1208), "contact")).toEqual({ kind: "stop", pulse: 1208, reason: "contact" });
  });

  test.each([1.01, -1.01, Number.NaN])("and atPart(%d) is refused", (part) => {
    expect(() => atPart(part)).toThrow(RangeError);
  });

  test("for linkages, each of which the schema takes, alone and in a chain", () => {
    const axis = { through: [mm(0), mm(0), mm(0)], along: [mm(0), mm(1), mm(0)] } as const;
    const linkages = [
      pushrod({ arm: mm(11), horn: mm(13), base: mm(48), rise: mm(-2), armAt: deg(95), hornAt: deg(100) }),
      ballRod({ shaft: axis, armBall: axis.along, hinge: axis, hornBall: axis.along, rod: mm(50) }),
      bentRod({ bend: deg(30), tipTo: "port" }),
      track({
        arm: mm(17),
        armAt: deg(50),
        base: mm(150),
        rise: mm(10),
        trackAt: deg(-6),
        travel: mm(34),
        cam: { kind: "powers", length: mm(34), terms: [{ deflection: deg(30), power: 2.3 }] },
      }),
      torqueRod({ sense: "opposite" }),
      cables({ arm: mm(12), horn: mm(14), base: mm(400), crossed: true }),
    ] as const;
    for (const linkage of [...linkages, chain(...linkages)]) {
      const data = { ...tug, surfaces: { ...tug.surfaces, rudder: { servo: servoWith(linkage) } } };
      expect(parseModel(data)).toEqual({ model: data });
    }
    expect(new Set(linkages.map(({ kind }) => kind)).size).toBe(6);
  });

  const servoWith = (linkage: unknown) => ({ channel: 9, bench: { level: 1500, down: 1900 }, linkage });
});
