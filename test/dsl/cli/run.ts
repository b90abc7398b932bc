import { runProgram } from "../../../packages/dsl/src/cli/program.ts";
import { type FakeIo, fakeIo } from "./fake-io.ts";

/** What `hingeline` with these arguments returns and prints; why it could not do anything on one line (`io.printed` has it broken). */
export async function run(
  args: readonly string[],
  io: FakeIo = fakeIo(),
): Promise<{ readonly exitCode: number; readonly stdout: string; readonly stderr: string }> {
  const exitCode = await runProgram(args, io);
  const { stdout, stderr } = io.printed;
  return { exitCode, stdout, stderr: stderr.replaceAll(told, (text) => text.replaceAll(/\n +/g, " ")) };
}

/** "hingeline: ", and its further lines under it. */
const told = /^hingeline: .*(?:\n {11}\S.*)*/gm;
