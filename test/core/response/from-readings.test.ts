import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { responseFromReadings } from "../../../packages/core/src/response/from-readings.ts";
import type { Response } from "../../../packages/core/src/response/response.ts";
import { deg, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { demoDoubts, demoReadings, demoTables, readings } from "./demo-readings.ts";

function responseOf(rows: Parameters<typeof responseFromReadings>[0]): Response {
  const { response } = responseFromReadings(rows, demoDoubts);
  if (response === undefined) throw new Error("no response");
  return response;
}

/** Everything a response says, sampled. */
function samples(response: Response) {
  const [low, high] = response.pulses;
  const pulses = Array.from({ length: 30 }, (_, i) => us(low + (i / 30) * (high - low)));
  const deflections = pulses.map((pulse) => response.deflectionAt(pulse));
  return {
    ...response,
    deflections,
    back: deflections.map((at) => at !== undefined && response.pulseAt(at)),
  };
}

const demo = fc.constantFrom(...demoTables).map(demoReadings);

describe("responseFromReadings", () => {
  it("covers the readings and nothing more, in the sense in which they run", () => {
    for (const table of demoTables) {
      const rows = demoReadings(table);
      const response = responseOf(rows);
      const [low, high] = response.pulses;
      expect(response.pulses).toEqual([
        Math.min(...rows.map((r) => r.pulseUs)),
        Math.max(...rows.map((r) => r.pulseUs)),
      ]);
      expect(response.deflections[0]).toBe(Math.min(...rows.map((r) => r.deflectionDeg)));
      expect(response.deflections[1]).toBe(Math.max(...rows.map((r) => r.deflectionDeg)));
      expect(Math.sign(response.slopeAt(us((low + high) / 2)) ?? 0)).toBe(response.rising ? 1 : -1);
      expect(response.deflectionAt(us(low - 0.01))).toBeUndefined();
      expect(response.slopeAt(us(high + 0.01))).toBeUndefined();
      expect(response.pulseAt(deg(response.deflections[1] + 0.01))).toBeUndefined();
      expect(response.pulseAt(deg(response.deflections[0] - 0.01))).toBeUndefined();
    }
  });

  it("returns each reading exactly, and every other pulse to 1e-9 us", () => {
    fc.assert(
      fc.property(demo, evenly(0, 1), (rows, at) => {
        const response = responseOf(rows);
        for (const { pulseUs, deflectionDeg } of rows) {
          expect(response.deflectionAt(us(pulseUs))).toBe(deflectionDeg);
          expect(response.pulseAt(deg(deflectionDeg))).toBe(pulseUs);
        }
        const pulse = us(response.pulses[0] + at * (response.pulses[1] - response.pulses[0]));
        const back = response.pulseAt(response.deflectionAt(pulse) ?? deg(999));
        expect(Math.abs((back ?? 0) - pulse)).toBeLessThan(1e-9);
      }),
    );
  });

  it("says the same whatever the order of the readings, to the last digit", () => {
    const shuffled = demo.chain((rows) =>
      fc.tuple(fc.constant(rows), fc.shuffledSubarray([...rows], { minLength: rows.length })),
    );
    fc.assert(
      fc.property(shuffled, ([rows, mixed]) => {
        expect(JSON.stringify(samples(responseOf(mixed)))).toBe(JSON.stringify(samples(responseOf(rows))));
      }),
    );
  });

  it("is mirrored by mirrored readings", () => {
    fc.assert(
      fc.property(demo, evenly(0, 1), (rows, at) => {
        const mirrored = responseOf(
          rows.map(({ pulseUs, deflectionDeg }) => ({ pulseUs: 3000 - pulseUs, deflectionDeg })),
        );
        const response = responseOf(rows);
        const pulse = us(response.pulses[0] + at * (response.pulses[1] - response.pulses[0]));
        expect(mirrored.deflectionAt(us(3000 - pulse))).toBeCloseTo(
          response.deflectionAt(pulse) ?? Number.NaN,
          10,
        );
        expect(mirrored.rising).toBe(!response.rising);
      }),
    );
  });

  // Worked beforehand for these invented benches, independently of this code; the pulses are given to 0.1 us.
  it.each([
    ["tow plane, left flap", [0, 6, 14, 42], [1858.9, 1795.6, 1697.7, 1235.4]],
    ["tow plane, right flap", [0, 6, 14, 42], [1154.1, 1216.3, 1315.6, 1783.2]],
    ["sailplane, left flap", [-1.5, 0, 4, 50], [1911.0, 1893.0, 1847.1, 1403.1]],
    ["sailplane, right flap", [-1.5, 0, 4, 50], [1102.3, 1120.0, 1164.0, 1603.4]],
    ["sailplane, left aileron", [-12], [1709.2]],
    ["sailplane, right aileron", [-12], [1300.3]],
    ["sailplane, left V-panel", [-12, 12], [1314.2, 1701.3]],
    ["sailplane, right V-panel", [-12, 12], [1298.9, 1685.3]],
    ["twin, rudder servo A", [-20, -10, 0, 10, 20], [1236.0, 1369.1, 1502.6, 1649.7, 1805.5]],
    ["twin, rudder servo B", [-20, -10, 0, 10, 20], [1171.1, 1328.8, 1479.5, 1622.4, 1762.6]],
    ["delta, left elevon", [-2], [1566.9]],
    ["delta, right elevon", [-2], [1441.8]],
  ] as const)("places the %s at %j degrees by the pulses worked for it", (table, wantedDeg, pulsesUs) => {
    const response = responseOf(demoReadings(table));
    const found = wantedDeg.map((at) => response.pulseAt(deg(at)) ?? Number.NaN);
    found.forEach((pulseUs, i) => {
      expect(Math.abs(pulseUs - (pulsesUs[i] ?? 0))).toBeLessThan(0.0501);
    });
  });

  it("has no response for no reading, one reading, or all at one pulse both ways", () => {
    expect(responseFromReadings([], demoDoubts)).toEqual({
      points: [],
      hysteresis: [],
      problems: [{ kind: "tooFew", pulses: 0, indices: [] }],
    });
    const one = responseFromReadings(readings([[1500, 3]]), demoDoubts);
    expect(one).not.toHaveProperty("response");
    expect(one.problems).toEqual([{ kind: "tooFew", pulses: 1, indices: [0] }]);
    const both = [
      { pulseUs: 1500, deflectionDeg: 3, way: "out" },
      { pulseUs: 1500, deflectionDeg: 3.4, way: "back" },
    ] as const;
    expect(responseFromReadings(both, demoDoubts).problems).toEqual([
      { kind: "tooFew", pulses: 1, indices: [0, 1] },
    ]);
  });

  it("draws a straight line through two readings and says that the shape is unknown", () => {
    const { response, problems } = responseFromReadings(
      readings([
        [1900, -10],
        [1100, 30],
      ]),
      demoDoubts,
    );
    expect(response?.deflectionAt(us(1300))).toBeCloseTo(20, 12);
    expect(response?.slopeAt(us(1300))).toBeCloseTo(-0.05, 15);
    expect(problems).toEqual([{ kind: "shapeUnknown", indices: [1, 0] }]);
  });

  it("has no response where a pulse was read twice, and names both readings", () => {
    const { response, problems } = responseFromReadings(
      readings([
        [1600, 8],
        [1200, 0],
        [1400, 4],
        [1200, 0.3],
      ]),
      demoDoubts,
    );
    expect(response).toBeUndefined();
    expect(problems).toEqual([
      { kind: "duplicate", pulseUs: 1200, deflectionsDeg: [0, 0.3], indices: [1, 3] },
    ]);
  });

  it("has no response where the readings turn, and still tells of hysteresis", () => {
    const rows = [
      ...readings([
        [1200, 0],
        [1400, 12],
        [1500, 8],
        [1600, 18],
        [1700, 24],
      ]),
      { pulseUs: 1800, deflectionDeg: 30.5, way: "out" as const },
      { pulseUs: 1800, deflectionDeg: 29.6, way: "back" as const },
    ];
    const { response, problems, hysteresis } = responseFromReadings(rows, demoDoubts);
    expect(response).toBeUndefined();
    expect(problems.map((problem) => problem.kind)).toEqual(["notMonotone"]);
    expect(hysteresis[0]?.differenceDeg).toBeCloseTo(0.9, 12);
  });

  it("goes through a suspicious reading all the same", () => {
    const rows = demoReadings("tow plane, left flap").map((reading) =>
      reading.pulseUs === 1535 ? { ...reading, deflectionDeg: 27.7 } : reading,
    );
    const { response, problems } = responseFromReadings(rows, demoDoubts);
    expect(problems).toMatchObject([{ kind: "suspicious", pulseUs: 1535, indices: [4] }]);
    expect(response?.deflectionAt(us(1535))).toBe(27.7);
  });
});
