import { defineConfig } from "vitest/config";
import base from "./vitest.config.ts";

// `npm run mutate -- linkage` tries the mutants of one folder of core on that folder's own tests.
const folder = process.env.MUTATED ?? "units";

export default defineConfig({
  ...base,
  test: { ...base.test, include: [`test/core/${folder}/**/*.test.ts`] },
});
