import { spawn } from "node:child_process";
import { build } from "esbuild";

/** A script of the tests with the sources it needs, as one text; a loader that keeps every import behind a getter would be slow. */
export async function bundle(entry) {
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    platform: "node",
    format: "esm",
    write: false,
    tsconfig: "tsconfig.json",
    logLevel: "error",
  });
  return outputFiles[0]?.text ?? "";
}

/** Runs such a text; its exit code. */
export function run(code, args = []) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ["--input-type=module", "-", ...args], {
      stdio: ["pipe", "inherit", "inherit"],
    });
    child.stdin.end(code);
    child.on("close", (status) => resolve(status ?? 1));
  });
}
