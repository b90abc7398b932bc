import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const source = (path: string) => fileURLToPath(new URL(path, import.meta.url));

// TEST_BUILD=1 runs the same suite on the built packages.
const alias = process.env.TEST_BUILD
  ? {}
  : {
      "@hingeline/core/schema": source("packages/core/src/schema.ts"),
      "@hingeline/core": source("packages/core/src/index.ts"),
      "@hingeline/dsl/render": source("packages/dsl/src/render/index.ts"),
      "@hingeline/dsl/sheet": source("packages/dsl/src/render/sheet/index.ts"),
      "@hingeline/dsl/source": source("packages/dsl/src/source/index.ts"),
      "@hingeline/dsl": source("packages/dsl/src/index.ts"),
    };

export default defineConfig({
  resolve: { alias },
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/fixtures/**", "**/node_modules/**"],
    setupFiles: ["test/support/seed-properties.ts"],
    testTimeout: 60_000,
    env: { NO_COLOR: "1" },
    // The continuous integration counts the tests from this file.
    ...(process.env.VITEST_JSON
      ? { reporters: ["default", "json"], outputFile: { json: process.env.VITEST_JSON } }
      : {}),
  },
});
