import type { Control, Model, Moves, Surface } from "../../packages/core/src/model/model.ts";
import { deg } from "../../packages/core/src/units/quantity.ts";
import { smallModel, smallSurface } from "./small-model.ts";

/** A model of any size: surface n hangs on selector n modulo their number, and two sticks move every fourth surface. */
export function largeModel({
  surfaces,
  selectors,
}: {
  readonly surfaces: number;
  readonly selectors: number;
}): Model {
  const names = Array.from({ length: surfaces }, (_, index) => `surface${index}`);
  const controls: Record<string, Control> = { pitch: { kind: "stick" }, roll: { kind: "stick" } };
  const moves: Record<string, Moves> = {
    pitch: Object.fromEntries(
      names.filter((_, index) => index % 4 === 0).map((name) => [name, [deg(-3), deg(3)] as const]),
    ),
    roll: Object.fromEntries(
      names.filter((_, index) => index % 4 === 1).map((name) => [name, [deg(2), deg(-2)] as const]),
    ),
  };
  for (let selector = 0; selector < selectors; selector++) {
    const own = names.filter((_, index) => index % selectors === selector);
    controls[`selector${selector}`] = { kind: "selector", detents: ["a", "b", "c", "d", "e", "f"] };
    moves[`selector${selector}`] = Object.fromEntries(
      ["a", "b", "c", "d", "e", "f"].map((detent, step) => [
        detent,
        Object.fromEntries(own.map((name) => [name, deg(step * 4)])),
      ]),
    );
  }
  return smallModel({
    surfaces: Object.fromEntries(
      names.map((name, index): [string, Surface] => [name, smallSurface({}, { channel: index + 1 })]),
    ),
    controls,
    moves,
    failsafe: {},
  });
}
