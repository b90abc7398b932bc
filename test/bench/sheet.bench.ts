// How long a bench sheet takes and how large it is. Run: npm run bench -- sheet
import { compile } from "@hingeline/core";
import { sheetToHtml } from "../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import { largeModel } from "../support/large-model.ts";

console.log("surfaces  ms a sheet  kB  (aim for 12: at most 50 ms, 400 kB)");
for (const surfaces of [3, 12, 50]) {
  const model = largeModel({ surfaces, selectors: 3 });
  const plan = compile(model);
  const times = Array.from({ length: 31 }, () => {
    const start = performance.now();
    sheetToHtml(model, plan);
    return performance.now() - start;
  }).slice(10);
  const median = times.sort((a, b) => a - b)[10] ?? Number.NaN;
  const bytes = Buffer.byteLength(sheetToHtml(model, plan));
  console.log(
    `${String(surfaces).padStart(8)}  ${median.toFixed(1).padStart(10)}  ${(bytes / 1000).toFixed(0).padStart(3)}`,
  );
}
