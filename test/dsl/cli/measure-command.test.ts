import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Io } from "../../../packages/dsl/src/cli/io.ts";
import { nodeFiles } from "../../../packages/dsl/src/cli/node-files.ts";
import type { Prompt } from "../../../packages/dsl/src/cli/prompt.ts";
import { examples } from "../source/fixture-source.ts";
import { type FakeIo, fakeIo } from "./fake-io.ts";
import { run } from "./run.ts";

const tug = readFileSync(join(examples, "bramblehook.ts"), "utf8");
const journal = "tug.ts.bench.jsonl";
let folder = "";

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
  writeFileSync(join(folder, "tug.ts"), tug);
});
afterEach(() => rmSync(folder, { recursive: true }));

const read = (name: string) => readFileSync(join(folder, name), "utf8");
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
const exists = (name: string) => existsSync(join(folder, name));

function realIo(prompt?: Prompt): FakeIo {
  const files: Partial<Io> = { ...nodeFiles, out: nodeFiles, ...(prompt === undefined ? {} : { prompt }) };
  return { ...fakeIo(), ...files, cwd: folder };
}

/** Someone who types these lines, is asked again after a wrong one, and at the end of them pulls the plug. */
function typist(lines: readonly string[]): Prompt & { readonly refused: string[] } {
  const left = [...lines];
  const refused: string[] = [];
  return {
    refused,
    ask: async (_message, problemWith) => {
      for (let line = left.shift(); line !== undefined; line = left.shift()) {
        const problem = problemWith(line);
        if (problem === undefined) return line;
        refused.push(problem);
      }
      throw new Error("killed");
    },
  };
}

/** The left flap measured anew: level, a stop, one reading corrected and one more. */
const answers = ["yes", "", "1860", "1879", "", "1765 8.4", "1700 14.1", "done", "end"];

/** The lines of the model file that the answers should change, and nothing else. */
const expected = tug
  .replace(
    'up: stopAt(us(1880), "contact"),\n          level: us(1859)',
    'up: stopAt(us(1879), "contact"),\n          level: us(1860)',
  )
  .replace("[us(1765), deg(8.6)],", "[us(1765), deg(8.4)],\n            [us(1700), deg(14.1)],");

function measure(...options: readonly string[]): Promise<Awaited<ReturnType<typeof run>>> {
  return run(["measure", "tug.ts", ...options], realIo());
}

function measureAt(prompt: Prompt, ...options: readonly string[]) {
  return run(["measure", "tug.ts", ...options], realIo(prompt));
}

describe("a session that was killed", () => {
  test("after any of its answers and resumed ends with a file whose diff shows only the new numbers", async () => {
    expect(expected).not.toBe(tug);
    for (let count = 0; count <= answers.length; count += 1) {
      write("tug.ts", tug);
      await expect(measureAt(typist(answers.slice(0, count)))).rejects.toThrow("killed");
      expect(read("tug.ts")).toBe(tug);
      expect(read(journal).trim().split("\n")).toHaveLength(count + 1);
      const { exitCode, stdout } = await measureAt(typist([...answers.slice(count), "yes"]));
      expect(exitCode).toBe(0);
      expect(read("tug.ts")).toBe(expected);
      expect(exists(journal)).toBe(false);
      expect(stdout.split("\n").filter((line) => /^[-+]/.test(line))).toEqual([
        '-          up: stopAt(us(1880), "contact"),',
        "-          level: us(1859),",
        '+          up: stopAt(us(1879), "contact"),',
        "+          level: us(1860),",
        "-            [us(1765), deg(8.6)],",
        "+            [us(1765), deg(8.4)],",
        "+            [us(1700), deg(14.1)],",
      ]);
    }
  });

  test("between writing the model and removing the journal begins anew", async () => {
    await expect(measureAt(typist(answers))).rejects.toThrow("killed");
    write("tug.ts", expected);
    const { stderr } = await measureAt(typist(["stop"]));
    expect(stderr).toContain(`All that ${journal} holds stands in tug.ts already; a new session begins.`);
  });

  test("does not go on over benches that were changed meanwhile", async () => {
    await expect(measureAt(typist(answers.slice(0, 4)))).rejects.toThrow("killed");
    write("tug.ts", tug.replace("us(1859)", "us(1850)"));
    const { exitCode, stderr } = await measureAt(typist([]));
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/^hingeline: The benches in tug\.ts are no longer those/);
    expect(exists(journal)).toBe(true);
  });
});

describe("at a terminal", () => {
  test("a wrong answer is asked again, stop keeps the rest, undo takes back", async () => {
    const person = typist(["no", "yes", "", "banana", "1870", "undo", "1860", "help", "stop"]);
    const { exitCode, stderr } = await measureAt(person);
    expect(exitCode).toBe(0);
    expect(person.refused).toHaveLength(2);
    expect(stderr).toContain("level: 1860 us, +72.0 %");
    expect(stderr).toContain("drops the reading at a pulse");
    expect(stderr).toContain(`kept in ${journal}`);
    expect(read(journal).trim().split("\n").slice(1)).toEqual(['"yes"', '""', '"1860"']);
  });

  test("nothing is written without a yes at the end", async () => {
    const { exitCode, stderr } = await measureAt(typist([...answers, "maybe", "stop"]));
    expect(exitCode).toBe(0);
    expect(stderr).toContain(`Nothing was written; ${journal} keeps the session.`);
    expect(read("tug.ts")).toBe(tug);
    await measureAt(typist(["yes"]));
    expect(read("tug.ts")).toBe(expected);
  });

  test("a session without a change writes nothing and leaves no journal", async () => {
    const { exitCode, stdout } = await measureAt(typist(["yes", "", "end"]));
    expect({ exitCode, stdout }).toEqual({ exitCode: 0, stdout: "" });
    expect([read("tug.ts"), exists(journal)]).toEqual([tug, false]);
  });

  test("--servo asks for those alone, in that order", async () => {
    const { stderr } = await measureAt(
      typist(["yes", "", "skip", "skip"]),
      "--servo",
      "elevator",
      "flapLeft",
    );
    expect([...stderr.matchAll(/^(\w+), channel/gm)].map(([, name]) => name)).toEqual([
      "elevator",
      "flapLeft",
    ]);
  });

  test("where the journal cannot be kept, nothing is asked", async () => {
    const person = typist([]);
    const io = {
      ...realIo(person),
      out: { ...nodeFiles, writeNew: () => Promise.reject(new Error("full")) },
    };
    const { exitCode, stderr } = await run(["measure", "tug.ts"], io);
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/bench\.jsonl cannot be written/);
  });
});

describe("what is computed", () => {
  const computed = tug.replace("level: us(1859)", "level: us(1800 + 59)");

  test("is shown with what to type, the rest is written, and the session is kept until it is typed", async () => {
    write("tug.ts", computed);
    const { exitCode, stderr } = await measureAt(typist([...answers, "yes"]));
    expect(exitCode).toBe(1);
    expect(stderr).toContain("To be typed by hand:");
    expect(stderr).toContain("surfaces.flapLeft.servo.bench.level is computed here");
    expect(stderr).toContain("comes to 1860");
    expect(read("tug.ts")).toBe(expected.replace("level: us(1860)", "level: us(1800 + 59)"));
    expect(exists(journal)).toBe(true);

    const again = await measureAt(typist([]));
    expect([again.exitCode, again.stdout]).toEqual([1, ""]);
    expect(again.stderr).toContain("comes to 1860");

    write("tug.ts", expected);
    const typed = await measureAt(typist(["stop"]));
    expect(typed.stderr).toContain("stands in tug.ts already");
  });
});

describe("from another folder", () => {
  test("what has to be typed by hand is shown under the file's whole name", async () => {
    const shared = tug
      .replace("export default", "const level = us(1859);\nexport default")
      .replaceAll(/level: us\(\d+\)/g, "level");
    write("tug.ts", shared);
    const elsewhere = mkdtempSync(join(tmpdir(), "hingeline-"));
    const files = { cwd: elsewhere };
    write("answers.txt", ["yes", "", "1860", "", "", "done", "1861", "", "", "done", "end"].join("\n"));
    const { exitCode, stderr } = await run(
      ["measure", join(folder, "tug.ts"), "--script", join(folder, "answers.txt"), "--dry-run"],
      { ...realIo(), ...files },
    );
    rmSync(elsewhere, { recursive: true });
    expect(exitCode).toBe(1);
    expect(stderr.replaceAll(/\n {2}(?=\S)/g, "")).toContain(`${join(folder, "tug.ts")}:`);
    expect(stderr).not.toContain("..");
  });
});

describe("--script", () => {
  test("gives the same answers from a file, with remarks", async () => {
    write("answers.txt", `# the left flap\r\n${answers.join("\r\n")}\r\n`);
    const { exitCode } = await measure("--script", "answers.txt");
    expect(exitCode).toBe(0);
    expect(read("tug.ts")).toBe(expected);
    expect(exists(journal)).toBe(false);
  });

  test("that ends too early keeps what there is and exits with 1; another goes on", async () => {
    write("first.txt", `${answers.slice(0, 5).join("\n")}\n`);
    expect((await measure("--script", "first.txt")).exitCode).toBe(1);
    write("second.txt", answers.slice(5).join("\n"));
    expect((await measure("--script", "second.txt")).exitCode).toBe(0);
    expect(read("tug.ts")).toBe(expected);
  });

  test("with a wrong answer names its line", async () => {
    write("answers.txt", "yes\n\nbanana\n");
    const { exitCode, stderr } = await measure("--script", "answers.txt");
    expect(exitCode).toBe(2);
    expect(stderr).toContain('hingeline: answers.txt, line 3: "banana" is neither');
    expect(read("tug.ts")).toBe(tug);
  });

  test("with --dry-run writes nothing at all, and prints what it would", async () => {
    write("answers.txt", answers.join("\n"));
    const { exitCode, stdout } = await measure("--script", "answers.txt", "--dry-run");
    expect(exitCode).toBe(0);
    expect(stdout).toContain("+            [us(1700), deg(14.1)],");
    expect([read("tug.ts"), exists(journal)]).toEqual([tug, false]);
  });
});

describe("--csv", () => {
  test("puts a logger's readings of one servo in the place of those in the model", async () => {
    write("flap.csv", "pulse;deflection\n1880;-2,4\n1765;8,5\n1535;25,3\n1172;44,5\n");
    const { exitCode, stderr } = await measure("--csv", "flap.csv", "--servo", "flapLeft");
    expect(exitCode).toBe(0);
    expect(stderr).toMatch(/1535 +\+7\.0 +\+25\.3/);
    const lines = [
      "[us(1880), deg(-2.4)]",
      "[us(1765), deg(8.5)]",
      "[us(1535), deg(25.3)]",
      "[us(1172), deg(44.5)]",
    ];
    const [start, end] = ["          readings: [\n", "          ],\n"].map((part) => tug.indexOf(part));
    expect(read("tug.ts")).toBe(
      `${tug.slice(0, start)}          readings: [\n${lines.map((line) => `            ${line},\n`).join("")}${tug.slice(end)}`,
    );
  });

  test("may name its servos itself, and keeps both ways", async () => {
    write(
      "both.csv",
      "servo,pulse,deflection,way\nelevator,1180,-21,out\nelevator,1850,22,out\nelevator,1512,0.2,out\nelevator,1512,-0.2,back\n",
    );
    expect((await measure("--csv", "both.csv")).exitCode).toBe(0);
    expect(read("tug.ts")).toContain('[us(1512), deg(-0.2), "back"],');
  });

  test.each([
    ["pulse,deflection\n1500,0", [], "bench.csv does not say which servo was read; give one with --servo."],
    ["1500,x", ["--servo", "elevator"], 'bench.csv: line 1: "x" is no deflection from -120 to 120 deg.'],
    ["servo,pulse,deflection\nflap,1500,0", [], 'bench.csv: "flap" is no servo of tug.ts.'],
    [
      "servo,pulse,deflection\nflapLeft,1500,0",
      ["--servo", "flapRight"],
      'bench.csv has readings of "flapLeft", which --servo does not name.',
    ],
  ])("of %j is refused in one sentence", async (text, options, sentence) => {
    write("bench.csv", text);
    const { exitCode, stderr } = await measure("--csv", "bench.csv", ...options);
    expect(exitCode).toBe(2);
    expect(stderr).toContain(`hingeline: ${sentence}`);
    expect(read("tug.ts")).toBe(tug);
  });

  test("waits for a session that is not finished", async () => {
    await expect(measureAt(typist(["yes"]))).rejects.toThrow("killed");
    write("bench.csv", "1500,0");
    const { exitCode, stderr } = await measure("--csv", "bench.csv", "--servo", "elevator");
    expect([exitCode, stderr]).toEqual([
      2,
      `hingeline: A session is not finished: ${journal}. Finish it, or remove that file.\n`,
    ]);
  });
});

describe("measure refuses in one sentence", () => {
  test("a start without a terminal, a script or a table", async () => {
    expect(await measure()).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: measure asks its questions at a terminal; without one give --script or --csv.\n",
    });
    expect(exists(journal)).toBe(false);
  });

  test("a servo that the model does not have", async () => {
    const { exitCode, stderr } = await measureAt(typist([]), "--servo", "flap");
    expect([exitCode, stderr]).toEqual([
      2,
      'hingeline: tug.ts has no servo "flap"; it has flapLeft, flapRight, aileronLeft, aileronRight, elevator.\n',
    ]);
  });

  test("a model in JSON, and a script together with a table", async () => {
    for (const args of [["tug.json"], ["tug.ts", "--script", "a", "--csv", "b"]]) {
      const { exitCode, stderr } = await run(["measure", ...args], realIo(typist([])));
      expect([exitCode, stderr.trim().split("\n").length]).toEqual([2, 1]);
    }
  });

  test("a file beside the model that is no journal", async () => {
    write(journal, "my notes\n");
    const { exitCode, stderr } = await measureAt(typist([]));
    expect([exitCode, stderr]).toEqual([
      2,
      `hingeline: ${journal} is no journal of a bench session; move it away.\n`,
    ]);
    expect(read(journal)).toBe("my notes\n");
  });

  test("a model that cannot be read without running it, before anything is asked", async () => {
    write("tug.ts", tug.replace("us(1859)", "us(Math.round(1859.2))"));
    const { exitCode, stderr } = await measureAt(typist([]));
    expect(exitCode).toBe(2);
    expect(stderr).toContain("tug.ts cannot be read without running it.");
  });
});
