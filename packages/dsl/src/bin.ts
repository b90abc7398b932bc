import { readFileSync } from "node:fs";
import type { Io } from "./cli/io.ts";
import { nodeFiles } from "./cli/node-files.ts";
import { nodeLive } from "./cli/node-live.ts";
import { runProgram } from "./cli/program.ts";
import { terminalPrompt } from "./cli/terminal-prompt.ts";

// Only `io.stdout` reaches standard output: what a model file prints while it runs must not mix with the data.
const writeOut = process.stdout.write.bind(process.stdout);
process.stdout.write = process.stderr.write.bind(process.stderr) as typeof process.stdout.write;

const io: Io = {
  cwd: process.cwd(),
  env: process.env,
  readFile: nodeFiles.readFile,
  realPath: nodeFiles.realPath,
  readStdin: async () => {
    const chunks: Buffer[] = [];
    for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
    return Buffer.concat(chunks);
  },
  stdout: { write: (text) => void writeOut(text), isTerminal: process.stdout.isTTY === true },
  stderr: { write: (text) => void process.stderr.write(text), isTerminal: process.stderr.isTTY === true },
  out: nodeFiles,
  ...(process.stdin.isTTY === true && process.stderr.isTTY === true
    ? { prompt: terminalPrompt(process.stdin, process.stderr) }
    : {}),
  live: nodeLive(
    () =>
      new Promise((end) => {
        process.once("SIGINT", end);
        process.once("SIGTERM", end);
      }),
  ),
  version: () =>
    (JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as { version: string })
      .version,
};

let done = false;
// A model file may end the process, or wait for ever: that is no success.
process.on("exit", () => {
  if (done) return;
  io.stderr.write("hingeline: the model file ended or stopped before it gave a model.\n");
  process.exitCode = 2;
});
process.on("uncaughtException", fail);
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  // The reader of a pipe has seen enough.
  if (error.code !== "EPIPE") return fail(error);
  done = true;
  process.exit(0);
});

runProgram(process.argv.slice(2), io).then(finish, fail);

function fail(error: unknown): void {
  io.stderr.write(
    `hingeline: stopped by an error: ${error instanceof Error ? error.message : String(error)}\n`,
  );
  finish(2);
}

/** Ends when all is written, whatever timers a model file has left running. */
function finish(exitCode: number): void {
  done = true;
  writeOut("", () => process.stderr.write("", () => process.exit(exitCode)));
}
