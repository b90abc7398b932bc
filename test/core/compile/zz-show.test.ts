import { test } from "vitest";
import bramblehook from "@hingeline/examples/bramblehook";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { orderOfEntry, findUnsafeSums } from "../../../packages/core/src/compile/order-of-entry.ts";
import { procedureLines } from "../../../packages/dsl/src/render/procedure-lines.ts";
import { numbersOf } from "../../../packages/dsl/src/render/numbers.ts";
import { paintFor } from "../../../packages/dsl/src/render/paint.ts";
const show = (steps: any, radio: any) => steps.map((s: any, i: number) => `${i+1} [${s.phase}] ${s.supply}/${s.linkage} ${s.text}\n` + s.edits.map((e: any) => `      EDIT ${JSON.stringify(e)}\n`).join("") + s.expect.map((e: any) => `      check ${e.channel} ${e.pulseUs.map((x:number)=>x.toFixed(1))}\n`).join("") + s.reach.map((e: any) => `      reach ${e.channel} ${e.pulseUs.map((x:number)=>x.toFixed(1))}\n`).join("")).join("");
test("show", () => {
  const plan = compile(bramblehook);
  console.log(show(orderOfEntry(plan), plan.radio));
  console.log(findUnsafeSums(plan), plan.findings.filter(f=>f.severity==="error"));
  const scale = compile({ ...bramblehook, radio: { ...bramblehook.radio, endPoints: "scale" } });
  console.log(scale.findings.filter(f=>f.severity==="error"), findUnsafeSums(scale));
  console.log(show(orderOfEntry(scale), scale.radio).slice(0, 3000));
});
