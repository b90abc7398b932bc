import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { camCurve } from "../../../packages/core/src/linkage/cam.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

const table = (points: readonly (readonly [extensionMm: number, deflectionDeg: number])[], travelMm = 34) =>
  camCurve({ kind: "table", points: points.map(([out, at]) => [mm(out), deg(at)]) }, travelMm);
const powers = (
  terms: readonly (readonly [deflectionDeg: number, power: number])[],
  lengthMm = 34,
  travelMm = 34,
) =>
  camCurve(
    {
      kind: "powers",
      length: mm(lengthMm),
      terms: terms.map(([deflection, power]) => ({ deflection: deg(deflection), power })),
    },
    travelMm,
  );
function sound(cam: ReturnType<typeof camCurve>) {
  if ("kind" in cam) throw new Error(cam.kind);
  return cam;
}

const sign = fc.constantFrom(1, -1);
const anyCam = fc.oneof(
  fc
    .tuple(fc.array(fc.tuple(evenly(1, 9), evenly(0.5, 12)), { minLength: 4, maxLength: 6 }), sign)
    .map(([steps, way]) => {
      const points: [number, number][] = [[0, 0]];
      for (const [out, at] of steps) {
        const [lastMm, lastDeg] = points.at(-1) ?? [0, 0];
        points.push([lastMm + out, lastDeg + way * at]);
      }
      const travelMm = points.at(-1)?.[0] ?? 0;
      return { cam: sound(table(points, travelMm)), travelMm };
    }),
  fc
    .tuple(evenly(1, 30), evenly(1, 30), evenly(1, 4), evenly(10, 60), sign)
    .map(([a, b, power, travelMm, way]) => ({
      cam: sound(
        powers(
          [
            [way * a, 1],
            [way * b, power],
          ],
          34,
          travelMm,
        ),
      ),
      travelMm,
    })),
);

describe("camCurve", () => {
  test("comes back from any deflection to its extension, both ends exactly", () => {
    fc.assert(
      fc.property(anyCam, evenly(0, 1), ({ cam, travelMm }, share) => {
        const back = cam.extensionAt(cam.deflectionAt(share * travelMm)) ?? Number.NaN;
        expect(cam.deflectionAt(back)).toBeCloseTo(cam.deflectionAt(share * travelMm), 11);
        expect(cam.extensionAt(cam.deflectionAt(0))).toBe(0);
        expect(cam.extensionAt(cam.deflectionAt(travelMm))).toBe(travelMm);
      }),
    );
  });

  test("has the slope that its deflections show", () => {
    fc.assert(
      fc.property(anyCam, evenly(0.01, 0.99), ({ cam, travelMm }, share) => {
        const at = share * travelMm;
        const slope = (cam.deflectionAt(at + 1e-5) - cam.deflectionAt(at - 1e-5)) / 2e-5;
        expect(cam.slopeAt(at)).toBeCloseTo(slope, 3);
      }),
    );
  });

  test("knows no extension for a deflection past either end", () => {
    fc.assert(
      fc.property(anyCam, evenly(0.01, 20), ({ cam, travelMm }, past) => {
        const [start, end] = [cam.deflectionAt(0), cam.deflectionAt(travelMm)];
        const way = Math.sign(end - start);
        expect(cam.extensionAt(start - way * past)).toBeUndefined();
        expect(cam.extensionAt(end + way * past)).toBeUndefined();
      }),
    );
  });

  test("is the sum of its powers, whole at its length", () => {
    const cam = sound(
      powers([
        [4, 1],
        [26, 2],
      ]),
    );
    expect([0, 17, 34].map((out) => cam.deflectionAt(out))).toEqual([0, 2 + 6.5, 30]);
    // By hand: 4 / 34 at the stop, (4 + 52) / 34 at the length.
    expect(cam.slopeAt(0)).toBeCloseTo(4 / 34, 12);
    expect(cam.slopeAt(34)).toBeCloseTo(56 / 34, 12);
  });

  test("takes a table that goes past the track, and holds a carriage a hair past its end at that end", () => {
    const cam = sound(
      table([
        [-5, -3],
        [0, 0],
        [40, 30],
      ]),
    );
    expect(cam.deflectionAt(0)).toBe(0);
    const exact = sound(
      table([
        [0, 0],
        [34, 30],
      ]),
    );
    expect(exact.deflectionAt(34 + 1e-12)).toBe(30);
    expect(exact.deflectionAt(-1e-12)).toBe(0);
    expect(exact.slopeAt(34 + 1e-12)).toBeCloseTo(30 / 34, 12);
  });

  test("refuses a table that ends before the track does, on either side, or has fewer than two points", () => {
    expect(table([])).toEqual({ kind: "camTooShort", fromMm: 0, camMm: 0, travelMm: 34 });
    expect(table([[3, 0]])).toEqual({ kind: "camTooShort", fromMm: 3, camMm: 3, travelMm: 34 });
    expect(
      table([
        [0, 0],
        [33.9, 30],
      ]),
    ).toEqual({ kind: "camTooShort", fromMm: 0, camMm: 33.9, travelMm: 34 });
    expect(
      table([
        [0.1, 0],
        [40, 30],
      ]),
    ).toEqual({ kind: "camTooShort", fromMm: 0.1, camMm: 40, travelMm: 34 });
  });

  test("refuses a table that stands still or turns back, naming where, and one whose extensions do not rise", () => {
    const turns = (points: Parameters<typeof table>[0]) => table(points);
    expect(
      turns([
        [0, 0],
        [10, 8],
        [20, 8],
        [34, 30],
      ]),
    ).toEqual({ kind: "camNotMonotone", extensionMm: 20 });
    expect(
      turns([
        [0, 0],
        [10, 8],
        [20, 7],
        [34, 30],
      ]),
    ).toEqual({ kind: "camNotMonotone", extensionMm: 20 });
    expect(
      turns([
        [0, 0],
        [10, -8],
        [34, 3],
      ]),
    ).toEqual({ kind: "camNotMonotone", extensionMm: 34 });
    expect(
      turns([
        [0, 0],
        [10, 8],
        [10, 9],
        [34, 30],
      ]),
    ).toEqual({ kind: "camNotMonotone", extensionMm: 10 });
    expect(
      turns([
        [0, 5],
        [34, 5],
      ]),
    ).toEqual({ kind: "camNotMonotone", extensionMm: 34 });
  });

  test("refuses powers without a length, below one, or that turn back on the track", () => {
    expect(powers([[4, 1]], 0)).toEqual({ kind: "notALength", name: "cam.length", lengthMm: 0 });
    expect(powers([[4, 0.9]])).toEqual({ kind: "camNotMonotone", extensionMm: 0 });
    expect(powers([])).toMatchObject({ kind: "camNotMonotone" });
    // By hand: 30 t - 20 t² turns back at t = 0.75; it shows at the next of the places that are looked at.
    const turned = powers([
      [30, 1],
      [-20, 2],
    ]);
    expect(turned).toMatchObject({ kind: "camNotMonotone" });
    expect("extensionMm" in turned && turned.extensionMm).toBeCloseTo(0.75 * 34, 0);
    expect(
      sound(
        powers(
          [
            [30, 1],
            [-20, 2],
          ],
          34,
          0.74 * 34,
        ),
      ).deflectionAt(0),
    ).toBe(0);
  });
});
