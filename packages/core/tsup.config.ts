import { defineConfig } from "tsup";

export default defineConfig({
  entry: [
    "src/index.ts",
    "src/schema.ts",
    // No entries of the package: what only one of these needs becomes a file of its own, which a bundler leaves out where
    // nothing of it is imported. The fit alone brings a library; conversions must weigh next to nothing. What works
    // something out as it loads must stand in one of these, or every import would carry it: `npm run budgets` tells.
    "src/compile/compile.ts",
    "src/findings/sentences.ts",
    "src/linkage/drives.ts",
    "src/linkage/size.ts",
    "src/plan/fingerprint.ts",
    "src/plan/verify/plan-faults.ts",
    "src/response/least-squares.ts",
    "src/signal/percent.ts",
    "src/units/conversions.ts",
  ],
  format: ["esm"],
  target: "es2022",
  platform: "neutral",
  dts: { entry: ["src/index.ts", "src/schema.ts"] },
  clean: true,
});
