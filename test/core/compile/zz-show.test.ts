import { test } from "vitest";
import fc from "fast-check";
import bramblehook from "@hingeline/examples/bramblehook";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { orderOfEntry, findUnsafeSums } from "../../../packages/core/src/compile/order-of-entry.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
test("show", () => {
  const plan = compile(bramblehook);
  for (let i=0;i<20;i++) orderOfEntry(plan);
  let t = performance.now();
  for (let i=0;i<20;i++) orderOfEntry(plan);
  console.log("order ms", (performance.now()-t)/20);
  t = performance.now();
  for (let i=0;i<20;i++) compile(bramblehook);
  console.log("compile ms", (performance.now()-t)/20);
  const models = fc.sample(arbitraryModel, 400);
  for (const endPoints of ["clamp","scale"] as const) {
    let ok=0, err=0, unsafe=0, tight = 0, neutralDiff=0, max=0; t=performance.now();
    for (const m of models) { const p = compile({...m, radio:{...m.radio,endPoints}}); if (p.findings.some(f=>f.severity==="error")) {err++; continue;} const o = orderOfEntry(p); max=Math.max(max,o.length); if (o.length) ok++; else if (findUnsafeSums(p).length) unsafe++; 
     for (const {reachUs, channel} of findUnsafeSums(p)) { const s=p.channels.find(c=>c.channel===channel)!.safeUs; if (Math.max(s[0]-reachUs[0],reachUs[1]-s[1])<3) tight++; } }
    console.log(endPoints, {ok,err,unsafe,tight,max}, performance.now()-t);
  }
});
