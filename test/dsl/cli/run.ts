import { runProgram } from "../../../packages/dsl/src/cli/program.ts";
import { type FakeIo, fakeIo } from "./fake-io.ts";

/** What `hingeline` with these arguments returns and prints. */
export async function run(
  args: readonly string[],
  io: FakeIo = fakeIo(),
): Promise<{ readonly exitCode: number; readonly stdout: string; readonly stderr: string }> {
  const exitCode = await runProgram(args, io);
  return { exitCode, ...io.printed };
}
