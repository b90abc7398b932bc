import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { build } from "esbuild";

// Bundled first, because a loader that keeps every import behind a getter would measure its getters.
const wanted = process.argv.slice(2);
const benches = readdirSync("test/bench").filter((name) => name.endsWith(".bench.ts"));
for (const name of benches) {
  if (wanted.length > 0 && !wanted.some((word) => name.startsWith(word))) continue;
  console.log(`\n${name}`);
  const { outputFiles } = await build({
    entryPoints: [`test/bench/${name}`],
    bundle: true,
    platform: "node",
    format: "esm",
    write: false,
    tsconfig: "tsconfig.json",
    logLevel: "error",
  });
  const { status } = spawnSync(process.execPath, ["--input-type=module", "-"], {
    input: outputFiles[0]?.text ?? "",
    stdio: ["pipe", "inherit", "inherit"],
  });
  if (status !== 0) process.exit(status ?? 1);
}
