import { defineConfig } from "tsup";

const all = { format: "esm", target: "node20", platform: "node", clean: true } as const;

export default defineConfig([
  {
    ...all,
    entry: {
      index: "src/index.ts",
      "render/index": "src/render/index.ts",
      "source/index": "src/source/index.ts",
      "render/sheet/index": "src/render/sheet/index.ts",
    },
    dts: true,
  },
  {
    ...all,
    // The command line carries its libraries with it: hundreds of small files would take longer to open than to run.
    entry: { bin: "src/bin.ts" },
    outDir: "dist-cli",
    noExternal: ["@hingeline/core", "sucrase", "zod"],
    // From its sources: the files of the built core import each other for order alone, of which esbuild warns.
    esbuildOptions(options) {
      options.alias = {
        "@hingeline/core": "../core/src/index.ts",
        "@hingeline/core/schema": "../core/src/schema.ts",
      };
    },
  },
]);
