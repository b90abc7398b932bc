import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

const root = new URL("..", import.meta.url);
const { packageManager } = JSON.parse(readFileSync(new URL("package.json", root), "utf8"));

/** Runs the pinned pnpm through npx, so that Node and npm are all a machine needs; stops this process if it fails. */
export function pnpm(...args) {
  const command = ["--yes", packageManager, ...args];
  const { status } = spawnSync("npx", command, {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  });
  if (status !== 0) process.exit(status ?? 1);
}
