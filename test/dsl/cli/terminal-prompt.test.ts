import { PassThrough } from "node:stream";
import { expect, test } from "vitest";
import { terminalPrompt } from "../../../packages/dsl/src/cli/terminal-prompt.ts";

/** A terminal of 80 columns whose keys are pressed when the question stands. */
function terminal() {
  const input = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => undefined });
  const output = Object.assign(new PassThrough(), { isTTY: true, columns: 80, rows: 24 });
  const shown: string[] = [];
  output.on("data", (chunk: Buffer) => shown.push(chunk.toString()));
  const type = async (...keys: readonly string[]) => {
    for (const key of keys) {
      await new Promise((resolve) => setTimeout(resolve, 30));
      input.write(key);
    }
  };
  return { prompt: terminalPrompt(input, output), type, shown: () => shown.join("") };
}

test("gives the line that was typed", async () => {
  const { prompt, type, shown } = terminal();
  const [line] = await Promise.all([prompt.ask("Level", () => undefined), type("1859", "\r")]);
  expect(line).toBe("1859");
  expect(shown()).toContain("Level");
});

test("gives an empty line for Enter alone", async () => {
  const { prompt, type } = terminal();
  const [line] = await Promise.all([prompt.ask("Level", () => undefined), type("\r")]);
  expect(line).toBe("");
});

test("shows what is wrong with a line, and lets it be corrected", async () => {
  const { prompt, type, shown } = terminal();
  const check = (line: string) => (line === "1859" ? undefined : "That is no pulse.");
  const [line] = await Promise.all([prompt.ask("Level", check), type("18599", "\r", "\u007f", "\r")]);
  expect(line).toBe("1859");
  expect(shown()).toContain("That is no pulse.");
});

test("gives nothing where the person breaks off", async () => {
  const { prompt, type } = terminal();
  const [line] = await Promise.all([prompt.ask("Level", () => undefined), type("18", "\u0003")]);
  expect(line).toBeUndefined();
});
