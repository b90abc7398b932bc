import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { deg, us } from "../../../packages/core/src/units/quantity.ts";
import { smallModel, smallSurface } from "../../support/small-model.ts";

test("a place that some sides do not reach names all of them", () => {
  const messageOf = (...downs: readonly number[]) => {
    const names = ["a", "b", "c"];
    const surfaces = downs.map((down, index) => [
      names[index],
      smallSurface({ down: us(down) }, { channel: index + 1 }),
    ]);
    return compile(
      smallModel({
        surfaces: Object.fromEntries(surfaces),
        groups: { all: { kind: "matched", surfaces: names, within: deg(1) } },
        moves: { lever: { stowed: {}, takeoff: {}, landing: { all: deg(25) } } },
      }),
    )
      .findings.filter(({ code }) => code === "one-side-short")
      .map(({ message }) => message);
  };
  const reach = "all of all reach -29 to 19 deg.";
  expect(messageOf(1800, 1700, 1700)).toEqual([`lever at landing is out of reach of b and c; ${reach}`]);
  expect(messageOf(1800, 1800, 1700)).toEqual([`lever at landing is out of reach of c alone; ${reach}`]);
  expect(messageOf(1700, 1700, 1700)).toEqual([]);
});
