import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mergeReadings } from "../../../packages/core/src/response/merge-readings.ts";
import { nextReading } from "../../../packages/core/src/response/next-reading.ts";
import { demoDoubts, demoReadings, demoTables, readings } from "./demo-readings.ts";

const flap = mergeReadings(demoReadings("tow plane, left flap")).points;
const flapWanted = [0, 6, 14, 42];

describe("nextReading", () => {
  it("is content with the tow plane's flap readings: each wanted deflection is known as well as it can be read", () => {
    expect(nextReading(flap, flapWanted, demoDoubts)).toMatchObject({ kind: "enough" });
  });

  it("asks for a reading at the wanted deflection in the widest bend, inside the gap", () => {
    const sparse = flap.filter((point) => ![1765, 1660].includes(point.pulseUs));
    const next = nextReading(sparse, flapWanted, demoDoubts);
    expect(next).toMatchObject({ kind: "gap", betweenUs: [1535, 1857] });
    // Worked by hand: d'' near 2e-4 deg/us² over 322 us is 2.6 degrees at most in the middle.
    if (next?.kind === "gap") {
      expect(next.gapDeg).toBeGreaterThan(0.5);
      expect(next.gapDeg).toBeLessThan(2.6);
      expect([6, 14]).toContain(next.wantedDeg);
    }
  });

  it("has the bound h² |d''| / 8 in the middle of a parabola's gap", () => {
    // d = 1e-4 (p - 900)² - so d'' is 2e-4; the curve's slopes at equally spaced inner readings come near it.
    const parabola = (pulseUs: number) => 1e-4 * (pulseUs - 900) ** 2;
    const points = mergeReadings(
      readings([1000, 1200, 1400, 1600, 1800].map((p) => [p, parabola(p)])),
    ).points;
    const next = nextReading(points, [parabola(1500)], { pulseUs: 1, deflectionDeg: 0.2 });
    expect(next).toMatchObject({ kind: "gap", betweenUs: [1400, 1600] });
    if (next?.kind === "gap") {
      expect(Math.abs(next.pulseUs - 1500)).toBeLessThan(3);
      expect(Math.abs(next.gapDeg - (200 ** 2 * 2e-4) / 8)).toBeLessThan(0.1);
    }
  });

  it("names the wanted deflection that is known worst, in whatever order they are asked for", () => {
    const sparse = flap.filter((point) => ![1765, 1660].includes(point.pulseUs));
    const wanted = [2, 6, 10, 14, 18];
    // One at a time, so that there is nothing to choose.
    const alone = wanted.map((deg) => nextReading(sparse, [deg], demoDoubts));
    const doubtOf = (next: (typeof alone)[number]) =>
      next === undefined || next.kind === "shapeUnknown" ? Number.NaN : next.gapDeg + next.readingDeg;
    const worst = Math.max(...alone.map(doubtOf));
    for (let turn = 0; turn < wanted.length; turn++) {
      const order = [...wanted.slice(turn), ...wanted.slice(0, turn)];
      for (const list of [order, order.toReversed()])
        expect(doubtOf(nextReading(sparse, list, demoDoubts))).toBe(worst);
    }
    // The same where all are known well enough.
    const coarse = { pulseUs: 30, deflectionDeg: 2 };
    const enough = wanted.map((deg) => doubtOf(nextReading(sparse, [deg], coarse)));
    for (const list of [wanted, wanted.toReversed()]) {
      expect(nextReading(sparse, list, coarse)?.kind).toBe("enough");
      expect(doubtOf(nextReading(sparse, list, coarse))).toBe(Math.max(...enough));
    }
  });

  it("is content with wide gaps where the pulse itself is in much doubt", () => {
    const sparse = flap.filter((point) => ![1765, 1660].includes(point.pulseUs));
    expect(nextReading(sparse, flapWanted, { pulseUs: 1, deflectionDeg: 0.1 })).toMatchObject({
      kind: "gap",
    });
    expect(nextReading(sparse, flapWanted, { pulseUs: 40, deflectionDeg: 0.1 })).toMatchObject({
      kind: "enough",
    });
  });

  it("never asks outside the readings, and with every reading taken where it asks is content in the end", () => {
    fc.assert(
      fc.property(fc.constantFrom(...demoTables), (table) => {
        let rows = [...demoReadings(table)];
        const { points } = mergeReadings(rows);
        const [low = 0, high = 0] = [points[0]?.pulseUs, points.at(-1)?.pulseUs];
        const wanted = [0.25, 0.5, 0.75].map((at) => {
          const [from = 0, to = 0] = [points[0]?.deflectionDeg, points.at(-1)?.deflectionDeg];
          return from + at * (to - from);
        });
        let kind: string | undefined;
        for (let step = 0; step < 6 && kind !== "enough"; step++) {
          const next = nextReading(mergeReadings(rows).points, wanted, demoDoubts);
          kind = next?.kind;
          if (next?.kind !== "gap") continue;
          expect(next.pulseUs).toBeGreaterThan(low);
          expect(next.pulseUs).toBeLessThan(high);
          rows = [...rows, { pulseUs: next.pulseUs, deflectionDeg: next.wantedDeg }];
        }
        expect(kind).toBe("enough");
      }),
    );
  });

  it("asks for the middle where two readings leave the shape unknown", () => {
    const { points } = mergeReadings(
      readings([
        [1101, 30],
        [1900, -10],
      ]),
    );
    expect(nextReading(points, [0], demoDoubts)).toEqual({
      kind: "shapeUnknown",
      pulseUs: 1501,
      betweenUs: [1101, 1900],
    });
  });

  it("has nothing to say on one reading, or where nothing wanted was measured", () => {
    expect(nextReading(flap.slice(0, 1), [0], demoDoubts)).toBeUndefined();
    expect(nextReading(flap, [60], demoDoubts)).toBeUndefined();
  });
});
