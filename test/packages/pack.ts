import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";

/** A package as it would be published. */
export interface Packed {
  /** The tarball, absolute. */
  readonly file: string;
  /** What lies in it, sorted. */
  readonly contents: readonly string[];
}

export const root = resolve(import.meta.dirname, "../..");
const { packageManager } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));

/** Packs a package of this repository into a folder with the pinned pnpm, which turns workspace versions into real ones. */
export function pack(name: "core" | "dsl", folder: string): Packed {
  const args = ["--yes", packageManager, "pack", "--json", "--pack-destination", folder];
  const { status, stdout, stderr } = run("npx", args, join(root, "packages", name));
  if (status !== 0) throw new Error(`packing ${name} failed: ${stdout}${stderr}`);
  const { filename } = JSON.parse(stdout) as { readonly filename: string };
  const listed = run("tar", ["-tzf", filename], folder).stdout.trim().split("\n");
  return { file: filename, contents: listed.map((path) => path.replace("package/", "")).sort() };
}

/** Runs a command as a stranger would, without the paths to this repository's packages that its test runner hands on. */
export function run(command: string, args: readonly string[], cwd: string) {
  const { NODE_PATH, ...env } = process.env;
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, env, encoding: "utf8" });
  return { status, stdout, stderr };
}
