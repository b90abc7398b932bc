import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import base from "./vitest.config.ts";

// `npm run mutate -- linkage` tries the mutants of one folder of core on that folder's own tests.
const folder = process.env.MUTATED ?? "units";

const fewRuns = fileURLToPath(new URL("test/support/few-runs.ts", import.meta.url));

export default defineConfig({
  ...base,
  resolve: { alias: { ...base.resolve?.alias, "fast-check": fewRuns } },
  test: { ...base.test, include: [`test/core/${folder}/**/*.test.ts`] },
});
