import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Drive } from "../../../packages/core/src/linkage/drive.ts";
import { drive } from "../../../packages/core/src/linkage/drives.ts";
import type { Linkage, Pushrod } from "../../../packages/core/src/linkage/linkage.ts";
import { responseFromLinkage } from "../../../packages/core/src/response/from-linkage.ts";
import type { Response } from "../../../packages/core/src/response/response.ts";
import { deg, degPerUs, mm, us } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";
import { demoLinkages, towFlap } from "./demo-linkages.ts";

const plain: Pushrod = {
  kind: "pushrod",
  arm: mm(12),
  horn: mm(15),
  base: mm(80),
  rise: mm(4),
  armAt: deg(95),
  hornAt: deg(88),
};

/** Arm and horn alike and square to the line between the axes: a parallelogram, deflection = rotation. */
const parallel: Pushrod = { ...plain, horn: mm(12), rise: mm(0), armAt: deg(90), hornAt: deg(90) };

function driveOf(linkage: Linkage): Drive {
  const made = drive(linkage);
  if ("kind" in made) throw new Error(made.kind);
  return made;
}

function respond(linkage: Linkage, level: number, rotation: number, pulses: readonly [number, number]) {
  return responseFromLinkage(driveOf(linkage), {
    level: us(level),
    rotation: degPerUs(rotation),
    pulses: [us(pulses[0]), us(pulses[1])],
  });
}

function present<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("nothing there");
  return value;
}

const setting = fc
  .record({
    demo: fc.constantFrom(...demoLinkages),
    part: evenly(0.5, 1.5),
    below: evenly(20, 700),
    above: evenly(20, 700),
  })
  .map(({ demo, part, below, above }) => {
    const [level, rotation] = [demo.levelUs, demo.degPerUs * part];
    const result = respond(demo.linkage, level, rotation, [level - below, level + above]);
    return { ...demo, rotation, ...present(result) };
  });

const parts = Array.from({ length: 21 }, (_, i) => i / 20);

describe("responseFromLinkage", () => {
  it("is the drive's deflection at rotation per microsecond times the way from level", () => {
    fc.assert(
      fc.property(setting, evenly(0, 1), ({ response, drive: made, levelUs, rotation }, part) => {
        const [low, high] = response.pulses;
        const pulse = us(low + part * (high - low));
        const expected = made.deflectionAt(deg(rotation * (pulse - levelUs)));
        expect(Math.abs((response.deflectionAt(pulse) ?? 999) - (expected ?? -999))).toBeLessThan(1e-10);
      }),
      { numRuns: 50 },
    );
  });

  it("turns a parallelogram's pulses straight into degrees", () => {
    const { response } = present(respond(parallel, 1500, -0.1, [1100, 1900]));
    expect(response.deflectionAt(us(1200))).toBeCloseTo(30, 9);
    expect(response.pulseAt(deg(-20))).toBeCloseTo(1700, 9);
    expect(response.slopeAt(us(1320))).toBeCloseTo(-0.1, 12);
    expect(response).toMatchObject({ rising: false, pulses: [1100, 1900], knots: [1100, 1900] });
  });

  it("finds the pulse again to 1e-9 us, at its ends exactly", () => {
    fc.assert(
      fc.property(setting, ({ response }) => {
        const [low, high] = response.pulses;
        for (const part of parts) {
          const pulse = us(part === 1 ? high : low + part * (high - low));
          const back = response.pulseAt(present(response.deflectionAt(pulse)));
          if (part === 0 || part === 1) expect(back).toBe(pulse);
          expect(Math.abs((back ?? 0) - pulse)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it("keeps within 1e-7 degrees of the cubic between its knots", () => {
    fc.assert(
      fc.property(setting, ({ response }) => {
        for (const [i, to] of response.knots.entries()) {
          const from = response.knots[i - 1];
          if (from === undefined) continue;
          expect(to).toBeGreaterThan(from);
          for (const part of [0.1, 0.3, 0.6, 0.85]) {
            const miss = hermiteMiss(response, from, to, part);
            expect(miss).toBeLessThan(1.2e-7);
          }
        }
        expect([response.knots[0], response.knots.at(-1)]).toEqual(response.pulses);
        expect(response.knots.length).toBeLessThan(1000);
      }),
      { numRuns: 25 },
    );
  });

  it("answers nothing outside its pulses and deflections", () => {
    fc.assert(
      fc.property(setting, evenly(0.001, 500), ({ response }, far) => {
        const [low, high] = response.pulses;
        for (const pulse of [us(low - far), us(high + far)]) {
          expect(response.deflectionAt(pulse)).toBeUndefined();
          expect(response.slopeAt(pulse)).toBeUndefined();
        }
        expect(response.pulseAt(deg(response.deflections[0] - far))).toBeUndefined();
        expect(response.pulseAt(deg(response.deflections[1] + far))).toBeUndefined();
      }),
      { numRuns: 50 },
    );
  });

  it("is cut 0.01 degrees short of a dead centre, and says at which end and which", () => {
    const made = driveOf(towFlap);
    expect(made.range.low.kind).toBe("deadCentreHorn");
    // The shaft turns against the pulse, so that the low end of rotation is the high end of pulse.
    const { response, cut } = present(respond(towFlap, 1859, -0.0915, [1172, 2200]));
    expect(cut.low).toBeUndefined();
    expect(cut.high?.end).toEqual(made.range.low);
    expect(cut.high?.pulse).toBe(response.pulses[1]);
    expect(-0.0915 * (response.pulses[1] - 1859)).toBeCloseTo(made.range.low.rotation + 0.01, 9);
    expect(response.slopeAt(response.pulses[1])).toBeLessThan(0);
  });

  it("goes up to the very end of a track", () => {
    const twin = present(demoLinkages.find((demo) => demo.table === "twin, left flap"));
    const { response, cut } = present(respond(twin.linkage, 1128, twin.degPerUs, [1000, 2000]));
    expect([cut.low?.end.kind, cut.high?.end.kind]).toEqual(["trackEnd", "trackEnd"]);
    expect(response.deflections[0]).toBeCloseTo(0, 9);
  });

  it("is undefined where the stops leave nothing of the range, and for a servo that does not turn", () => {
    expect(respond(towFlap, 1859, -0.0915, [2100, 2200])).toBeUndefined();
    expect(respond(plain, 1500, 0, [1100, 1900])).toBeUndefined();
    expect(respond(plain, 1500, 0.09, [1500, 1500])).toBeUndefined();
  });
});

/** How far a response is from the cubic through two knots and their slopes. */
function hermiteMiss(response: Response, from: number, to: number, t: number): number {
  const value = (pulse: number) => response.deflectionAt(us(pulse)) ?? Number.NaN;
  const slope = (pulse: number) => response.slopeAt(us(pulse)) ?? Number.NaN;
  const width = to - from;
  const [a, b] = [value(from), value(to)];
  const [da, db] = [slope(from) * width, slope(to) * width];
  // Powers of t, as a check on the symmetric form of the source.
  const cubic = a + t * (da + t * (3 * (b - a) - 2 * da - db + t * (da + db - 2 * (b - a))));
  return Math.abs(cubic - value(from + t * width));
}
