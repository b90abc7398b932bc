import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { examples } from "../source/fixture-source.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

let folder = "";
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
const io = () => ({ ...fakeIo(), cwd: folder });
const wrenfield = readFileSync(join(fixtures, "wrenfield.ts"), "utf8");

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe("findings of a model file are shown with their line", () => {
  test("by check and by plan, at the literal", async () => {
    write("tug.ts", wrenfield.replace("landing: { flap: deg(25) }", "landing: { flap: deg(35) }"));
    const frame = [
      "  tug.ts:34:96",
      "  34 | …p: deg(0) }, takeoff: { flap: deg(12) }, landing: { flap: deg(35) } } },",
      "     |                                                                ^^",
    ];
    for (const command of ["check", "plan"]) {
      const { stdout, exitCode } = await run([command, "tug.ts"], io());
      expect(exitCode).toBe(1);
      expect(stdout).toContain("moves.lever.landing.flap");
      expect(
        stdout
          .split("\n")
          .filter((line) => /tug\.ts:|^ +\d* \|/.test(line))
          .slice(0, 3),
      ).toEqual(frame);
    }
  });

  test("at the name where that is what is wrong", async () => {
    const framesOf = async (from: string, to: string) => {
      write("tug.ts", wrenfield.replace(from, to));
      const { stdout } = await run(["check", "tug.ts", "--no-types"], io());
      const lines = stdout.split("\n");
      const caret = lines.findIndex((line) => /^ +\| +\^/.test(line));
      const [code = "", carets = ""] = lines.slice(caret - 1);
      return { marked: code.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1), stdout };
    };
    const surface = await framesOf("landing: { flap: deg(25) }", "landing: { flpa: deg(25) }");
    expect(surface.marked).toBe("flpa");
    expect(surface.stdout).toContain('-> Did you mean "flap"?');
    const bench = await framesOf("level: us(1500)", "levle: us(1500)");
    expect(bench.marked).toBe("levle");
    expect(bench.stdout).toContain('-> Did you mean "level"?');
    expect(bench.stdout).toMatch(/^1 error,/);
  });

  test("by their address in the file that holds them, and what is computed as computed", async () => {
    write("moves.ts", 'import { deg } from "@hingeline/dsl";\nexport const landing = { flap: deg(35) };\n');
    const split = `import { landing } from "./moves";\n${wrenfield.replace("{ flap: deg(25) }", "landing")}`;
    write("tug.ts", split);
    expect((await run(["check", "tug.ts"], io())).stdout).toContain(
      "  moves.ts:2:36\n  2 | export const landing = { flap: deg(35) };\n    |                                    ^^\n",
    );
    write("tug.ts", wrenfield.replace("deg(25)", "deg(Math.round(35))"));
    expect((await run(["check", "tug.ts"], io())).stdout).toContain("tug.ts:34:96 (computed here)\n");
  });

  test("by every command that reads one", async () => {
    write("tug.ts", wrenfield.replace("level: us(1500)", "levle: us(1500)"));
    write("other.ts", wrenfield);
    for (const args of [
      ["sheet", "tug.ts"],
      ["doubt", "tug.ts"],
      ["verify", "tug.ts", "--template"],
      ["diff", "other.ts", "tug.ts"],
      ["port", "tug.ts", "other.ts"],
      ["port", "other.ts", "tug.ts"],
      ["convert", "tug.ts", "--pulse", "1500"],
      ["convert", "tug.ts", "--channel", "1", "--pulse", "1500"],
      ["size", "tug.ts", "--servo", "flap", "--arm-holes", "8", "--horn-holes", "15", "--travel", "60"],
      ["swap", "tug.ts", "--servo", "flap"],
      ["measure", "tug.ts", "--csv", "none.csv"],
    ]) {
      const { exitCode, stdout, stderr } = await run(args, io());
      expect([args, exitCode, stdout]).toEqual([args, 1, ""]);
      expect(stderr).toMatch(/^ {2}19 \| .*levle/m);
    }
  });

  test("where a sheet is refused because of them", async () => {
    write("tug.ts", wrenfield.replace("landing: { flap: deg(25) }", "landing: { flap: deg(35) }"));
    const { exitCode, stderr } = await run(["sheet", "tug.ts", "--out", "out.html"], io());
    expect(exitCode).toBe(1);
    expect(stderr).toMatch(/^ {2}34 \| .*deg\(35\)/m);
  });

  test("from another folder, under the file's whole name", async () => {
    mkdirSync(join(folder, "models"));
    mkdirSync(join(folder, "plans"));
    write("models/tug.ts", wrenfield.replace("deg(25)", "deg(35)"));
    const framed = async (cwd: string) =>
      (await run(["check", join(folder, "models/tug.ts")], { ...fakeIo(), cwd })).stdout
        .replaceAll(/\n {2}(?=\S)/g, "")
        .match(/\S+tug\.ts:34:96/)?.[0];
    expect(await framed(join(folder, "plans"))).toContain(`${folder}/models/tug.ts:34:96`);
    expect(await framed(folder)).not.toContain(folder);
  });

  test("also where the data is no model, but not in JSON output", async () => {
    write("tug.ts", wrenfield.replace("level: us(1500)", "level: us(15)"));
    expect((await run(["plan", "tug.ts"], io())).stderr).toContain("tug.ts:19:21\n");
    expect((await run(["check", "tug.ts", "--format", "json"], io())).stdout).not.toContain("tug.ts");
  });

  test("in lines of 80 columns at most", async () => {
    const { stdout } = await run(["check", "bramblehook.ts"], { ...fakeIo(), cwd: examples });
    expect(stdout).toMatch(/bramblehook\.ts:\d+:\d+/);
    for (const line of stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe("--static", () => {
  test.each(["bramblehook", "ostrevale", "slatewing"])(
    "gives the plan of %s that running it gives",
    async (name) => {
      const plan = (...options: readonly string[]) =>
        run(["plan", `${name}.ts`, "--format", "json", ...options], { ...fakeIo(), cwd: examples });
      expect(await plan("--static")).toEqual(await plan());
    },
  );

  test("runs nothing, and shows what it does not read", async () => {
    write(
      "tug.ts",
      `globalThis.hostileRan = true;\n${wrenfield.replace("deg(25)", "deg(Math.round(25.2))")}`,
    );
    const { exitCode, stdout, stderr } = await run(["check", "tug.ts", "--static", "--no-types"], io());
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: "" });
    expect("hostileRan" in globalThis).toBe(false);
    expect(stderr).toMatch(/^hingeline: tug\.ts cannot be read without running it\.\n/);
    expect(stderr).toContain("  tug.ts:1:1\n  1 | globalThis.hostileRan = true;\n");
    expect(stderr).toContain("tug.ts:35:96\n");
  });

  test("reads no file outside the project folder, by whatever way", async () => {
    mkdirSync(join(folder, "project"));
    write("secret.ts", "export const secret = 25;\n");
    write("project/package.json", "{}");
    symlinkSync("../secret.ts", join(folder, "project/linked.ts"));
    for (const from of ["../secret.ts", "./linked.ts"]) {
      const text = `import { secret } from "${from}";\n${wrenfield.replace("deg(25)", "deg(secret)")}`;
      write("project/tug.ts", text);
      const { exitCode, stderr } = await run(["check", "project/tug.ts", "--static"], io());
      expect(exitCode).toBe(2);
      expect(stderr).toContain("project/tug.ts:1:24\n");
    }
  });

  test("reads what the project shares above the model's folder", async () => {
    mkdirSync(join(folder, "models"));
    write("package.json", "{}");
    write("angles.ts", "export const full = 25;\n");
    const text = `import { full } from "../angles.ts";\n${wrenfield.replace("deg(25)", "deg(full)")}`;
    write("models/tug.ts", text);
    expect(await run(["plan", "models/tug.ts", "--static"], io())).toEqual(
      await run(["plan", "models/tug.ts"], io()),
    );
  });
});
