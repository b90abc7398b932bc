import { readFileSync } from "node:fs";
import { test, expect } from "vitest";
import { gatherSource } from "../../../packages/dsl/src/source/gather-source.ts";
import { readModel } from "../../../packages/dsl/src/source/read-model.ts";
import { locate } from "../../../packages/dsl/src/source/locate.ts";
test.each(["bramblehook","ostrevale","slatewing"])("%s", async (name) => {
  const t = performance.now();
  const source = await gatherSource(`${name}.ts`, async (path) => { try { return readFileSync(`packages/examples/src/${path}`, "utf8") } catch { return undefined } });
  const t1 = performance.now();
  const read = await readModel(source);
  const t2 = performance.now();
  const run = (await import(`../../../packages/examples/src/${name}.ts`)).default;
  console.log(t1-t, t2-t1, "refusals" in read ? read.refusals.slice(0,3): "");
  expect(JSON.stringify("model" in read ? read.model : 0)).toBe(JSON.stringify(run));
  console.log(locate(source, "surfaces.flapLeft.servo.bench.readings[2]"), locate(source, "surfaces.flapLeft.servo.type.torque"))
});
