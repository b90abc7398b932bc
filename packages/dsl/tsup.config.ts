import { defineConfig } from "tsup";

export default defineConfig({
  entry: {
    index: "src/index.ts",
    "render/index": "src/render/index.ts",
    "source/index": "src/source/index.ts",
    "render/sheet/index": "src/render/sheet/index.ts",
    bin: "src/bin.ts",
  },
  format: ["esm"],
  target: "node20",
  platform: "node",
  dts: true,
  sourcemap: true,
  clean: true,
});
