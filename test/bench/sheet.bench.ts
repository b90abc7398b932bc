import { compile } from "@hingeline/core";
import { sheetToHtml } from "../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import { largeModel } from "../support/large-model.ts";
import { measure, type Row } from "./row.ts";

/** A whole bench sheet of 12 surfaces beside the compiling of its plan; its size stands in its name. */
export async function rows(): Promise<readonly Row[]> {
  const model = largeModel({ surfaces: 12, selectors: 3 });
  const plan = compile(model);
  const kB = Buffer.byteLength(sheetToHtml(model, plan)) / 1000;
  const took = await measure(
    { sheet: () => sheetToHtml(model, plan), plan: () => compile(model) },
    { timeMs: 1000 },
  );
  return [
    {
      what: `sheet of 12 surfaces, ${kB.toFixed(0)} kB`,
      tookNs: took.sheet,
      beside: "compile the same",
      besideNs: took.plan,
      aim: "50 ms, 400 kB",
    },
  ];
}
