import { spawnSync } from "node:child_process";

// Mutates core folder by folder (all of them take hours), each against its own tests; prints the mutants that survive.
const folders = process.argv.slice(2);
if (folders.length === 0) {
  console.error("Usage: npm run mutate -- units signal ... (folders of packages/core/src)");
  process.exit(2);
}
const stryker = "node_modules/@stryker-mutator/core/bin/stryker.js";
let worst = 0;
for (const folder of folders) {
  const { status } = spawnSync(
    process.execPath,
    [stryker, "run", "--mutate", `packages/core/src/${folder}/**/*.ts`],
    { stdio: "inherit", env: { ...process.env, MUTATED: folder } },
  );
  worst = Math.max(worst, status ?? 1);
}
process.exit(worst);
