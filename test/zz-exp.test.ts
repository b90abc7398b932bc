import { it } from "vitest";
import { drive } from "../packages/core/src/linkage/drives.ts";
import { dimensionsOf } from "../packages/core/src/linkage/dimensions.ts";
import { isProblem } from "../packages/core/src/linkage/drive.ts";
import { fitShape } from "../packages/core/src/response/fit-shape.ts";
import { deg, mm } from "../packages/core/src/units/quantity.ts";
import { seededRandom } from "../packages/core/src/uncertainty/random.ts";
const g = () => 0;
it("x", () => {
  const base = { kind: "pushrod", arm: mm(10), horn: mm(17), base: mm(88), rise: mm(-16), armAt: deg(-90+16), hornAt: deg(-60) } as const;
  for (const real of [10, 11, 12]) for (const seed of [1,2,3,4,5,6,7,8]) for (const withGain of [true]) {
    const random = seededRandom(seed);
    const normal = () => Math.sqrt(-2*Math.log(1-random()))*Math.cos(2*Math.PI*random());
    const d = drive({ ...base, arm: mm(real) }); if (isProblem(d)) throw new Error(d.kind);
    const gain = 0.09*(1+0.01*normal()), z = normal();
    const points = [-38,-25,-15,-5,5,16,28,40].map((r) => ({ pulseUs: 1500 + (r)/gain, deflectionDeg: (d.deflectionAt(deg(r+z)) ?? NaN) - (d.deflectionAt(deg(z))??NaN) + 0.15*normal() }));
    const nom = drive(base); if (isProblem(nom)) throw new Error();
    for (const doubt of [0.15, 0.264]) {
    const known = withGain ? { degPerUs: 0.09 } : {};
    const t0 = performance.now();
    const plain = fitShape(nom, points, doubt, { levelUs: 1500, degPerUs: 0.09 }, known);
    const t1 = performance.now();
    const cands = [...dimensionsOf(base).map((dim) => {
      const f = fitShape(nom, points, doubt, { levelUs: 1500, degPerUs: 0.09 }, known, { declared: dim.value, doubt: dim.unit === "mm" ? 2 : 5, driveWith: (v) => { const m = drive(dim.with(v)); return isProblem(m) ? undefined : m; } });
      return [dim.path.join("."), f?.chiSquare ?? NaN, f?.free?.value ?? NaN, f?.free?.doubt ?? NaN] as const;
    }), (() => { const f = fitShape(nom, points, doubt, { levelUs: 1500, degPerUs: 0.09 }, { degPerUs: 0.09, degPerUsDoubt: 0.1 }); return ["gain", f?.chiSquare ?? NaN, f?.degPerUs.value ?? NaN, f?.degPerUs.doubt ?? NaN] as const; })()].sort((a, b) => a[1]-b[1]);
    const t2 = performance.now();
    console.log(`R${real} s${seed} u${doubt} plain ${plain?.chiSquare.toFixed(1)} ${(t1-t0).toFixed(1)}ms/${(t2-t1).toFixed(0)}ms | ${cands.map(c => `${c[0]} ${c[1].toFixed(1)} (${c[2].toFixed(2)}±${c[3].toFixed(2)})`).slice(0,5).join(" ")}`);
    }
  }
});
