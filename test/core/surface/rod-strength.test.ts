import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MATERIALS } from "../../../packages/core/src/surface/materials.ts";
import { rodForce } from "../../../packages/core/src/surface/rod-force.ts";
import {
  bucklingForce,
  type RodEnds,
  type RodMake,
} from "../../../packages/core/src/surface/rod-strength.ts";
import { findWeakestPart } from "../../../packages/core/src/surface/weakest-part.ts";
import { mm, newtons, nm } from "../../../packages/core/src/units/quantity.ts";
import { evenly } from "../../support/evenly.ts";

const forceOf = (rod: RodMake) => bucklingForce(rod) ?? newtons(0);
const steelRod = (diameter: number) =>
  forceOf({ material: "steel", diameter: mm(diameter), length: mm(104) });

describe("bucklingForce", () => {
  const material = fc.constantFrom(...(Object.keys(MATERIALS) as (keyof typeof MATERIALS)[]));

  it("grows with the fourth power of the diameter and falls with the square of the length", () => {
    fc.assert(
      fc.property(
        material,
        evenly(0.8, 6),
        evenly(30, 900),
        evenly(1.1, 3),
        (of, diameter, length, factor) => {
          const force = (d: number, l: number) => forceOf({ material: of, diameter: mm(d), length: mm(l) });
          expect(force(diameter * factor, length) / force(diameter, length)).toBeCloseTo(factor ** 4, 6);
          expect(force(diameter, length * factor) / force(diameter, length)).toBeCloseTo(factor ** -2, 9);
        },
      ),
    );
  });

  it("rises the better the ends are held: once, 2.05 and 4 times the pinned rod's, a quarter when one is free", () => {
    const force = (ends: RodEnds) => forceOf({ material: "carbon", diameter: mm(3), length: mm(300), ends });
    // Source: Euler's column, effective lengths of any textbook: 1, 0.699, 0.5 and 2.
    expect(force("fixedPinned") / force("pinned")).toBeCloseTo(2.0457, 4);
    expect(force("fixed") / force("pinned")).toBeCloseTo(4, 12);
    expect(force("fixedFree") / force("pinned")).toBeCloseTo(0.25, 12);
  });

  it("loses to a bore what the bore's own rod would hold", () => {
    fc.assert(
      fc.property(evenly(1, 8), evenly(0, 0.95), (diameter, part) => {
        const rod = { material: { modulusGPa: 70 }, length: mm(200) };
        const tube = forceOf({ ...rod, diameter: mm(diameter), bore: mm(diameter * part) });
        const [outer, inner] = [1, part].map((of) => forceOf({ ...rod, diameter: mm(diameter * of) }));
        expect(tube).toBeCloseTo((outer ?? NaN) - (inner ?? NaN), 6);
      }),
    );
  });

  it("is undefined for a tube that has no wall", () => {
    fc.assert(
      fc.property(evenly(1, 8), evenly(1, 2), (diameter, part) => {
        const rod = { material: "carbon", diameter: mm(diameter), length: mm(200) } as const;
        expect(bucklingForce({ ...rod, bore: mm(diameter * part) })).toBeUndefined();
      }),
    );
  });

  // Source: trade practice, worked rod of a tow plane's flap: steel, 104 mm, pinned.
  it("is 143 N for the worked rod of 2 mm and 350 N for 2.5 mm", () => {
    expect(steelRod(2).toFixed(0)).toBe("143");
    expect(steelRod(2.5).toFixed(0)).toBe("350");
  });
});

describe("rodForce", () => {
  it("times its radius is the moment", () => {
    fc.assert(
      fc.property(evenly(-5, 5), evenly(2, 40), (moment, radius) => {
        expect(((rodForce(nm(moment), mm(radius)) ?? NaN) * radius) / 1000).toBeCloseTo(Math.abs(moment), 9);
      }),
    );
  });

  it("is undefined at a dead centre", () => {
    expect(rodForce(nm(1), mm(0))).toBeUndefined();
    expect(rodForce(nm(0), mm(0))).toBeUndefined();
    expect(rodForce(nm(1), mm(Number.MIN_VALUE))).toBeUndefined();
  });

  // Source: trade practice, worked servo of 1.37 N m on an arm that stands 9.0 mm off its rod.
  it("is 152 N for the worked stalled servo", () => {
    expect(rodForce(nm(1.37), mm(9))?.toFixed(0)).toBe("152");
  });
});

describe("findWeakestPart", () => {
  const parts = fc.array(fc.record({ name: fc.string(), holds: evenly(10, 900).map(newtons) }), {
    minLength: 1,
  });

  it("names a part that no other is weaker than, with the force as its share", () => {
    fc.assert(
      fc.property(parts, evenly(0, 500), (all, force) => {
        const weakest = findWeakestPart(newtons(force), all);
        expect(weakest?.holds).toBe(Math.min(...all.map((part) => part.holds)));
        expect((weakest?.share ?? NaN) * (weakest?.holds ?? NaN)).toBeCloseTo(force, 9);
      }),
    );
  });

  // Source: trade practice: the 2 mm rod bends before the servo of 152 N stalls, the horn of 180 N does not; with a
  // 2.5 mm rod the horn is the weakest and holds.
  it("names the worked rod of 2 mm, and the horn once the rod is 2.5 mm", () => {
    const stalled = rodForce(nm(1.37), mm(9)) ?? newtons(0);
    const horn = { name: "horn", holds: newtons(180) };
    const thin = findWeakestPart(stalled, [horn, { name: "rod", holds: steelRod(2) }]);
    const thick = findWeakestPart(stalled, [horn, { name: "rod", holds: steelRod(2.5) }]);
    expect(thin?.name).toBe("rod");
    expect(thin?.share).toBeGreaterThan(1);
    expect(thick?.name).toBe("horn");
    expect(thick?.share).toBeLessThan(1);
  });

  it("is undefined where no part is known, and takes the first of equals", () => {
    expect(findWeakestPart(newtons(10), [])).toBeUndefined();
    const equals = ["arm", "horn"].map((name) => ({ name, holds: newtons(100) }));
    expect(findWeakestPart(newtons(10), equals)?.name).toBe("arm");
  });
});
