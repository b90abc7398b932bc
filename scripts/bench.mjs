import { bundle, run } from "./run-bundled.mjs";

process.exit(await run(await bundle("test/bench/run.ts"), process.argv.slice(2)));
