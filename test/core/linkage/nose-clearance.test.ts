import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { noseClearance, slotGapAt } from "../../../packages/core/src/linkage/nose-clearance.ts";
import { deg, mm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

describe("noseClearance", () => {
  // A demo model's cove gaps (trade notes C24): nose 9 mm ahead of and 17 mm above a dropped hinge.
  it.each([
    [1.1, -3.8],
    [0.7, -2.4],
  ])("a gap of %d mm closes at %d degrees", (gap, contact) => {
    expect(noseClearance([mm(-9), mm(17)], mm(gap)).contact.up).toBeCloseTo(contact, 1);
  });

  it("the gap is what was measured at level, nothing at contact and wider below level", () => {
    const { gapAt, contact } = noseClearance([mm(-9), mm(17)], mm(1.1));
    expect(gapAt(deg(0))).toBeCloseTo(1.1, 12);
    expect(gapAt(contact.up ?? deg(0))).toBeCloseTo(0, 12);
    expect(gapAt(deg(20))).toBeGreaterThan(5);
    expect(gapAt(deg(-6))).toBeLessThan(0);
  });

  it("closes at its contacts, up at most level and down, and nowhere nearer to level", () => {
    fc.assert(
      fc.property(evenly(-20, 20), evenly(-20, 20), evenly(0.1, 10), (aft, up, gap) => {
        const { gapAt, contact } = noseClearance([mm(aft), mm(up)], mm(gap));
        for (const [way, at] of [
          [-1, contact.up],
          [1, contact.down],
        ] as const) {
          if (at !== undefined) {
            expect(Math.sign(at)).toBe(way);
            expect(gapAt(at)).toBeCloseTo(0, 9);
          }
          const clearDeg = Math.abs(at ?? 180);
          for (let part = 0; part < 1; part += 0.05)
            expect(gapAt(deg(way * part * clearDeg))).toBeGreaterThan(0);
        }
      }),
    );
  });

  it("a nose below the hinge closes up on the way down; one that reaches nothing has no contact", () => {
    expect(noseClearance([mm(-9), mm(-17)], mm(1.1)).contact.down).toBeCloseTo(3.8, 1);
    expect(noseClearance([mm(-3), mm(2)], mm(4)).contact).toEqual({});
  });
});

describe("slotGapAt", () => {
  it("is lip to nose less the nose's radius, and follows the turn about the hinge", () => {
    const slot = { lip: [mm(2), mm(19)], nose: [mm(-9), mm(12)], radius: mm(5) } as const;
    expect(slotGapAt(slot, deg(0))).toBeCloseTo(Math.hypot(11, 7) - 5, 12);
    // Trailing edge down by a quarter turn: ahead goes up, up goes aft. (-9, 12) stands at (12, 9).
    expect(slotGapAt(slot, deg(90))).toBeCloseTo(Math.hypot(10, 10) - 5, 12);
  });
});
