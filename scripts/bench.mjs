import { readdirSync } from "node:fs";
import { bundle, run } from "./run-bundled.mjs";

const wanted = process.argv.slice(2);
for (const name of readdirSync("test/bench").filter((file) => file.endsWith(".bench.ts"))) {
  if (wanted.length > 0 && !wanted.some((word) => name.startsWith(word))) continue;
  console.log(`\n${name}`);
  const status = await run(await bundle(`test/bench/${name}`));
  if (status !== 0) process.exit(status);
}
