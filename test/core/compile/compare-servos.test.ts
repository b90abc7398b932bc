import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Servo, ServoType, Surface } from "../../../packages/core/src/model/model.ts";
import { deg, degPerUs, nm } from "../../../packages/core/src/units/quantity.ts";
import { readings, smallModel, smallServo } from "../../support/small-model.ts";

/** A servo whose surface stands `bowDeg` further down half-way to either end. */
const bowed = (channel: number, bowDeg: number, type: ServoType = {}): Servo =>
  smallServo({
    channel,
    type,
    bench: {
      ...smallServo().bench,
      readings: readings([1200, -30], [1350, -15 + bowDeg], [1500, 0], [1650, 15 + bowDeg], [1800, 30]),
    },
  });
const swing = (name: string) => ({
  lever: { stowed: { [name]: deg(0) }, takeoff: { [name]: deg(-28) }, landing: { [name]: deg(28) } },
});

describe("servos of one surface", () => {
  const gangOf = (servos: Surface["servos"]) =>
    compile(smallModel({ surfaces: { rudder: { servos: servos ?? {} } }, moves: swing("rudder") }));
  const straight = bowed(1, 0);
  const [down, up] = [bowed(2, 0.45), bowed(3, -0.45)];

  test("are compared each with each, whatever their order", () => {
    for (const servos of [
      { a: straight, b: down, c: up },
      { a: down, b: straight, c: up },
      { a: up, b: down, c: straight },
    ]) {
      const { gangs, findings } = gangOf(servos);
      expect(gangs[0]?.worstDeg).toBeCloseTo(0.9, 1);
      expect(findings.map(({ code }) => code)).toContain("servos-fight");
    }
    // Each of the two is within half a degree of the straight one.
    for (const servo of [down, up])
      expect(gangOf({ a: straight, b: servo }).gangs[0]?.worstDeg).toBeLessThan(0.5);
  });

  test("strain with the same torque in either order, and with the rotation of one alone", () => {
    const type = (rotation?: number): ServoType => ({
      torque: nm(0.4),
      ...(rotation === undefined ? {} : { rotation: degPerUs(rotation) }),
    });
    const fight = (first: ServoType, second: ServoType) =>
      gangOf({ a: bowed(1, 0.45, first), b: bowed(2, -0.45, second) }).gangs[0]?.fightNm;
    const both = fight(type(0.09), type(0.1));
    expect(both).toBeGreaterThan(0);
    expect(fight(type(0.1), type(0.09))).toBeCloseTo(both ?? NaN, 3);
    expect(fight(type(), type(0.1))).toBeCloseTo(both ?? NaN, 3);
    expect(fight(type(0.1), type())).toBeCloseTo(both ?? NaN, 3);
    expect(fight(type(), type())).toBeUndefined();
  });
});

describe("sides of a matched group", () => {
  const matchOf = (left: Surface["servos"], right: Surface["servos"]) =>
    compile(
      smallModel({
        surfaces: { left: { servos: left ?? {} }, right: { servos: right ?? {} } },
        groups: { all: { kind: "matched", surfaces: ["left", "right"], within: deg(1) } },
        moves: swing("all"),
      }),
    );

  test("are compared by every servo of theirs", () => {
    const { matches, findings } = matchOf(
      { a: bowed(1, 0), b: bowed(2, 0) },
      { a: bowed(3, 0), b: bowed(4, 2) },
    );
    expect(matches[0]?.worstDeg).toBeGreaterThan(1.5);
    expect(matches[0]?.surfaces).toEqual(["left", "right"]);
    expect(findings.map(({ code }) => code)).toContain("sides-differ");
  });

  test("are not servos of one surface", () => {
    const { matches } = matchOf({ a: bowed(1, 0), b: bowed(2, 2) }, { a: bowed(3, 1) });
    // Either servo of the left is 1 degree from the right, and 2 from the other.
    expect(matches[0]?.worstDeg).toBeLessThan(1.3);
  });
});
