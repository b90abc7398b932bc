import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findFlats } from "../../../packages/core/src/signal/find-flats.ts";

const read = (...points: readonly (readonly [percent: number, pulseUs: number])[]) =>
  points.map(([percent, pulseUs]) => ({ percent, pulseUs }));

/** Five percents in rising order; steps of some microseconds, so that flats of all kinds come about. */
const readings = fc
  .array(fc.constantFrom(0, 1, 2, 3, 30, 60), { minLength: 4, maxLength: 4 })
  .map((stepsUs) =>
    [-100, -50, 0, 50, 100].map((percent, at) => ({
      percent,
      pulseUs: 1400 + stepsUs.slice(0, at).reduce<number>((total, one) => total + one, 0),
    })),
  );

describe("findFlats", () => {
  it("finds the same whatever the order of the readings, and where each percent is read twice", () => {
    fc.assert(
      fc.property(
        readings.chain((rising) =>
          fc.tuple(fc.constant(rising), fc.shuffledSubarray([...rising, ...rising], { minLength: 10 })),
        ),
        ([rising, twice]) => {
          expect(findFlats(twice, 1)).toEqual(findFlats(rising, 1));
        },
      ),
    );
  });

  it("finds stretches of two percents or more that share no percent, in rising order", () => {
    fc.assert(
      fc.property(readings, (rising) => {
        const ends = findFlats(rising, 1).flatMap((flat) => [flat.fromPercent, flat.toPercent]);
        expect(ends).toEqual([...new Set(ends)].toSorted((a, b) => a - b));
      }),
    );
  });

  it("lets two readings' doubts pass for standing still, and no more", () => {
    const stepped = (stepUs: number) => findFlats(read([0, 1500], [50, 1700], [100, 1700 + stepUs]), 1);
    expect(stepped(2)).toEqual([{ where: "high", fromPercent: 50, toPercent: 100, pulseUs: 1701 }]);
    expect(stepped(-2)).toHaveLength(1);
    expect(stepped(2.1)).toEqual([]);
  });

  it("says nothing of percents so close that the mean slope moves the pulse by four readings' doubts at most", () => {
    // 5 us a percent from end to end.
    const close = (byPercent: number, doubtUs: number) =>
      findFlats(read([0, 1500], [100 - byPercent, 2000], [100, 2000]), doubtUs);
    expect(close(2, 2.5)).toEqual([]);
    expect(close(2.5, 2.5)).toHaveLength(1);
    expect(close(0.9, 1)).toHaveLength(1);
    expect(close(0.8, 1)).toEqual([]);
  });

  it("finds none in readings at one percent, or in none", () => {
    expect(findFlats([], 1)).toEqual([]);
    expect(findFlats(read([50, 1500], [50, 1510]), 1)).toEqual([]);
  });
});
