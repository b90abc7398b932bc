import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Moves } from "../../../packages/core/src/model/model.ts";
import { deg } from "../../../packages/core/src/units/quantity.ts";
import { codesOf, findingOf } from "../../support/expect-finding.ts";
import { smallModel, smallSurface } from "../../support/small-model.ts";

const pair = (group: string, lever: Moves) =>
  smallModel({
    surfaces: { left: smallSurface(), right: smallSurface({}, { channel: 2 }) },
    groups: { [group]: { kind: "together", surfaces: ["left", "right"] } },
    controls: { lever: { kind: "selector", detents: ["stowed", "landing"] }, roll: { kind: "stick" } },
    moves: { lever },
  });
const landing = (group: string) => pair(group, { stowed: {}, landing: { [group]: deg(20), left: deg(25) } });

describe("a surface that a group and its own name move at one place", () => {
  test("is an error at a detent, whichever name comes first in the alphabet", () => {
    expect(findingOf(landing("flaps"), "moved-twice", "moves.lever.landing.left").message).toBe(
      'left gets two places here, one by "flaps" and one by "left".',
    );
    expect(findingOf(landing("zflaps"), "moved-twice", "moves.lever.landing.zflaps").severity).toBe("error");
    expect(compile(landing("flaps")).procedure).toEqual([]);
  });

  test("is an error on a stick, and in each case that depends on a detent", () => {
    const both = { flaps: [deg(-5), deg(5)], left: [deg(-9), deg(9)] } as const;
    const { moves: _, ...rest } = pair("flaps", { stowed: {}, landing: {} });
    expect(findingOf({ ...rest, moves: { roll: both } }, "moved-twice", "moves.roll.left")).toBeDefined();
    const roll = { per: "lever", cases: { stowed: {}, landing: both } };
    const at = "moves.roll.cases.landing.left";
    expect(findingOf({ ...rest, moves: { roll } }, "moved-twice", at)).toBeDefined();
  });

  test("is none at two places, nor by two controls", () => {
    const { moves: _, ...rest } = pair("flaps", {});
    const moves = {
      lever: { stowed: { flaps: deg(1) }, landing: { left: deg(5) } },
      roll: { left: [deg(-2), deg(2)] },
    } as const;
    expect(codesOf({ ...rest, moves })).not.toContain("moved-twice");
  });
});
