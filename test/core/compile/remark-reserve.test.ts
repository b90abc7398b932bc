import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Control, Model, Moves, Surface } from "../../../packages/core/src/model/model.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import { smallModel, smallServo, smallSurface } from "../../support/small-model.ts";

const phase: Control = { kind: "selector", detents: ["cruise", "landing"] };
const reserving = (
  moves: Readonly<Record<string, Moves>>,
  controls: Readonly<Record<string, Control>> = {},
  surface: Surface = smallSurface(),
): Model =>
  smallModel({
    surfaces: { elevator: { ...surface, reserve: { up: deg(25) } } },
    controls: { pitch: { kind: "stick" }, ...controls },
    moves,
    failsafe: {},
  });
const shorts = (model: Model) => compile(model).findings.filter(({ code }) => code === "reserve-short");
const stick = (size: number) => ({ elevator: [deg(-size), deg(size)] }) as const;

describe("the reserve of a surface", () => {
  test("is looked at where a stick alone moves it", () => {
    expect(shorts(reserving({ pitch: stick(10) }))[0]?.message).toBe(
      "elevator reaches only 10 deg up with full stick; 25 deg is wanted.",
    );
    expect(shorts(reserving({ pitch: stick(26) }))).toEqual([]);
  });

  test("is looked at at every detent on which a stick's travel depends", () => {
    const pitch = (landing: number) => ({
      per: "phase",
      cases: { cruise: stick(26), landing: stick(landing) },
    });
    const [short, ...more] = shorts(reserving({ pitch: pitch(10) }, { phase }));
    expect(short?.message).toContain("10 deg up with full stick at phase landing;");
    expect(short?.numbers).toEqual({ leftDeg: 10, wantedDeg: 25 });
    expect(more).toEqual([]);
    expect(shorts(reserving({ pitch: pitch(25) }, { phase }))).toEqual([]);
  });

  test("is looked at once with all selectors at their first detent", () => {
    const flap: Control = { kind: "selector", detents: ["up", "down"] };
    const moves = {
      pitch: stick(24),
      phase: { cruise: {}, landing: { elevator: deg(-2) } },
      flap: { up: {}, down: { elevator: deg(3) } },
    };
    expect(shorts(reserving(moves, { phase, flap })).map(({ message }) => message)).toEqual([
      "elevator reaches only 24 deg up with full stick at flap up, phase cruise; 25 deg is wanted.",
      "elevator reaches only 21 deg up with full stick at flap down; 25 deg is wanted.",
    ]);
  });

  test("is not held against pulses", () => {
    const { readings: _, ...bench } = smallServo().bench;
    const place = (part: number) => ({ kind: "part", part }) as const;
    const moves = { pitch: { elevator: [place(-0.05), place(0.05)] } } as const;
    expect(shorts(reserving(moves, {}, { servo: { channel: 1, bench } }))).toEqual([]);
  });
});
