import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import base from "./vitest.config.ts";

// `npm run mutate -- linkage` tries the mutants of one folder of core on that folder's own tests.
const folder = process.env.MUTATED ?? "units";

const fewRuns = fileURLToPath(new URL("test/support/few-runs.ts", import.meta.url));

// What scripts/mutation/tester.mjs needs of the instrumented sources: caches that can be emptied between two mutants, and an
// end to counting which test meets which mutant (stryCov_9fa48 is what Stryker puts at the head of each file for that).
const prepareForMutants = {
  name: "prepare-for-mutants",
  transform: (code: string, id: string) =>
    id.includes("/packages/core/src/")
      ? code
          .replaceAll("new WeakMap", "new globalThis.ForgetfulWeakMap")
          .replace(
            "stryCov_9fa48 = cover;",
            "$& (ns.stopCovering ??= []).push(() => { stryCov_9fa48 = () => {}; });",
          )
      : undefined,
};

export default defineConfig({
  ...base,
  resolve: { alias: { ...base.resolve?.alias, "fast-check": fewRuns } },
  plugins: [prepareForMutants],
  // Stryker looks after the time.
  test: { ...base.test, testTimeout: 0, include: [`test/core/${folder}/**/*.test.ts`] },
});
