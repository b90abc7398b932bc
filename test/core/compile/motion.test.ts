import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type Controls,
  extremeSum,
  type Move,
  type Share,
  sumMoves,
} from "../../../packages/core/src/compile/motion.ts";
import type { Control } from "../../../packages/core/src/model/model.ts";
import { pct } from "../../../packages/core/src/units/quantity.ts";

const degrees = fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10);

/** Up to three selectors of up to three detents, up to two sticks; a control depends on an earlier selector or on none. */
const arbitraryMotion = fc
  .record({
    detents: fc.array(fc.integer({ min: 1, max: 3 }), { maxLength: 3 }),
    sticks: fc.array(
      fc.record({ trim: fc.constantFrom(0, 10, 25), rests: fc.constantFrom<-1 | 0 | 1>(-1, 0, 1) }),
      { maxLength: 2 },
    ),
  })
  .chain(({ detents, sticks }) => {
    const controls = new Map<string, Control>();
    detents.forEach((count, index) => {
      controls.set(`selector${index}`, { kind: "selector", detents: ["a", "b", "c"].slice(0, count) });
    });
    sticks.forEach(({ trim, rests }, index) => {
      controls.set(`stick${index}`, { kind: "stick", trim: pct(trim), rests });
    });
    const names = [...controls.keys()];
    const moves = names.map((name, index) => {
      const control = controls.get(name);
      const count = control?.kind === "selector" ? control.detents.length : 0;
      const share: fc.Arbitrary<Share | undefined> =
        count > 0
          ? fc
              .array(degrees, { minLength: count, maxLength: count })
              .map((values) => ({ kind: "detents", values }))
          : fc.option(fc.record({ kind: fc.constant("stick" as const), low: degrees, high: degrees }), {
              nil: undefined,
            });
      const parents = names.slice(0, index).filter((parent) => controls.get(parent)?.kind === "selector");
      return fc
        .option(fc.constantFrom(undefined, ...parents), { nil: null })
        .chain((per): fc.Arbitrary<Move | undefined> => {
          if (per === null) return fc.constant(undefined);
          if (per === undefined) return share.map((one) => ({ control: name, cases: [one] }));
          const parent = controls.get(per);
          const cases = parent?.kind === "selector" ? parent.detents.length : 1;
          return fc
            .array(share, { minLength: cases, maxLength: cases })
            .map((list) => ({ control: name, per, cases: list }));
        });
    });
    return fc
      .tuple(...moves)
      .map((list) => ({ controls: controls as Controls, moves: list.filter((move) => move !== undefined) }));
  });

test("no combination of controls on a fine grid beats extremeSum, and its witness gives it", () => {
  fc.assert(
    fc.property(arbitraryMotion, ({ controls, moves }) => {
      const sums = allStates(controls).map((state) => sumMoves(moves, controls, state));
      for (const sign of [-1, 1] as const) {
        const { value, state } = extremeSum(moves, controls, sign);
        expect(sumMoves(moves, controls, state)).toBe(value);
        const brute = sign < 0 ? Math.min(...sums) : Math.max(...sums);
        expect(value).toBeCloseTo(brute, 9);
      }
    }),
    { numRuns: 150 },
  );
});

test("sumMoves: a stick is straight-line on either side of level, a lever that rests at an end is one line", () => {
  const moves: Move[] = [{ control: "c", cases: [{ kind: "stick", low: -10, high: 30 }] }];
  const at = (rests: -1 | 0 | 1, position: number) =>
    sumMoves(moves, new Map([["c", { kind: "stick", rests }]]), new Map([["c", position]]));
  expect([-1, -0.5, 0, 0.5, 1].map((position) => at(0, position))).toEqual([-10, -5, 0, 15, 30]);
  expect([-1, -0.5, 0, 0.5, 1].map((position) => at(-1, position))).toEqual([-10, 0, 10, 20, 30]);
  expect(at(0, 1.1)).toBeCloseTo(33, 12);
});

test("extremeSum is instant for 30 selectors of 6 detents, and keeps to rest where nothing is gained", () => {
  const controls = new Map<string, Control>();
  for (let index = 0; index < 30; index++)
    controls.set(`s${index}`, { kind: "selector", detents: ["a", "b", "c", "d", "e", "f"] });
  const moves = [...controls.keys()].map(
    (control): Move => ({ control, cases: [{ kind: "detents", values: [0, 1, 2, 2, 0, -1] }] }),
  );
  const { value, state } = extremeSum(moves, controls, 1);
  expect(value).toBe(60);
  expect(new Set(state.values())).toEqual(new Set([2]));
  const still = extremeSum(
    [{ control: "s0", cases: [{ kind: "detents", values: [0, 0, 0, 0, 0, 0] }] }],
    controls,
    1,
  );
  expect(still.state.get("s0")).toBe(0);
});

function allStates(controls: Controls): Map<string, number>[] {
  let states = [new Map<string, number>()];
  for (const [name, control] of controls) {
    const end = control.kind === "stick" ? 1 + (control.trim ?? 0) / 100 : 0;
    const values =
      control.kind === "selector"
        ? control.detents.map((_, index) => index)
        : [-1, -0.6, -0.2, 0, 0.3, 0.7, 1].map((share) => share * end);
    states = states.flatMap((state) => values.map((value) => new Map(state).set(name, value)));
  }
  return states;
}
