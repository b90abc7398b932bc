import { runBundled } from "./run-bundled.mjs";

await runBundled("test/soak/random-models.ts", process.argv.slice(2));
