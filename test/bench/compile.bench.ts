// How long a plan takes, by size of the model. Run: npm run bench -- compile
import { compile, type Model } from "@hingeline/core";
import { largeModel } from "../support/large-model.ts";

const sizes = [3, 12, 50, 200];

const rows = sizes.map((surfaces) => ({
  surfaces,
  ms: medianMs(() => compile(largeModel({ surfaces, selectors: 3 }))),
}));
console.log("surfaces  ms a plan  us a surface");
for (const { surfaces, ms } of rows)
  console.log(
    `${String(surfaces).padStart(8)}  ${ms.toFixed(3).padStart(9)}  ${((ms * 1000) / surfaces).toFixed(1).padStart(12)}`,
  );

console.log("\nselectors  ms a plan (12 surfaces)");
for (const selectors of [3, 6, 12]) {
  const model: Model = largeModel({ surfaces: 12, selectors });
  console.log(
    `${String(selectors).padStart(9)}  ${medianMs(() => compile(model))
      .toFixed(3)
      .padStart(9)}`,
  );
}

function medianMs(work: () => unknown): number {
  for (let warm = 0; warm < 30; warm++) work();
  const times = Array.from({ length: 41 }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[20] ?? Number.NaN;
}
