import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

const root = new URL("..", import.meta.url);
const { packageManager } = JSON.parse(readFileSync(new URL("package.json", root), "utf8"));

/** Runs the pinned pnpm through npx, so that Node and npm are all a machine needs; stops this process if it fails. */
export function pnpm(...args) {
  const { status } = run(args, "inherit");
  if (status !== 0) process.exit(status ?? 1);
}

/** The same with one line, `doing`, in place of what it prints; all of that where it fails. */
export function pnpmQuietly(doing, ...args) {
  console.log(`${doing} ...`);
  const { status, stdout, stderr, error } = run(args, "pipe");
  if (status === 0) return;
  process.stderr.write(error === undefined ? stdout + stderr : `${error.message}\n`);
  process.exit(status ?? 1);
}

function run(args, stdio) {
  return spawnSync("npx", ["--yes", packageManager, ...args], {
    cwd: root,
    stdio,
    encoding: "utf8",
    maxBuffer: 2 ** 28,
    shell: process.platform === "win32",
  });
}
