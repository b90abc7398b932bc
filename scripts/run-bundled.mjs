import { spawnSync } from "node:child_process";
import { build } from "esbuild";

/** Bundles a script of the tests with the sources and runs it; a loader that keeps every import behind a getter would be slow. */
export async function runBundled(entry, args = []) {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    platform: "node",
    format: "esm",
    write: false,
    tsconfig: "tsconfig.json",
    logLevel: "error",
  });
  const { status } = spawnSync(process.execPath, ["--input-type=module", "-", ...args], {
    input: outputFiles[0]?.text ?? "",
    stdio: ["pipe", "inherit", "inherit"],
  });
  if (status !== 0) process.exit(status ?? 1);
}
