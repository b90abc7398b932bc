import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
// Not through pnpm: npm warns of the settings that pnpm hands to what it starts.
import "./setup.mjs";

mkdirSync("demo", { recursive: true });

const model = "packages/examples/src/bramblehook.ts";
hingeline("plan", model);
hingeline("plan", model, "--format", "json", "--out", "demo/bramblehook.plan.json");
console.log("\nThe same plan as JSON: demo/bramblehook.plan.json");

function hingeline(...args) {
  const { status } = spawnSync(process.execPath, ["packages/dsl/bin/hingeline.mjs", ...args], {
    stdio: "inherit",
  });
  if (status !== 0) process.exit(status ?? 1);
}
