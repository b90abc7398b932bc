import { readFileSync } from "node:fs";
import { canonicalJson, compile } from "@hingeline/core";
import { modelFindings, parseModel } from "@hingeline/core/schema";
import { describe, expect, test } from "vitest";
import { frameFindings } from "../../../packages/dsl/src/cli/frame-findings.ts";
import { countFindings, findingsToText } from "../../../packages/dsl/src/render/findings-to-text.ts";
import { planToText } from "../../../packages/dsl/src/render/plan-to-text.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { tooFar, wrenfield } from "./wrenfield.ts";

const canonical = `${canonicalJson(compile(wrenfield))}\n`;
const parsed = parseModel(JSON.parse(readFileSync(`${fixtures}misspelt.json`, "utf8")));
const malformed = "problems" in parsed ? parsed.problems : [];
const out = `${fixtures}out.json`;

describe("plan", () => {
  test("prints the plan as text", async () => {
    const stdout = planToText(compile(wrenfield));
    expect(await run(["plan", "wrenfield.ts"])).toEqual({ exitCode: 0, stdout, stderr: "" });
  });

  test("prints the same canonical JSON from TypeScript, JSON and standard input", async () => {
    const args = ["--format", "json"];
    const result = { exitCode: 0, stdout: canonical, stderr: "" };
    expect(await run(["plan", "wrenfield.ts", ...args])).toEqual(result);
    expect(await run(["plan", "wrenfield.json", ...args])).toEqual(result);
    expect(await run(["plan", "-", ...args], fakeIo({ stdin: JSON.stringify(wrenfield) }))).toEqual(result);
  });

  test("--pretty prints the same content in lines", async () => {
    const { stdout } = await run(["plan", "wrenfield.ts", "--format", "json", "--pretty"]);
    expect(canonicalJson(JSON.parse(stdout))).toBe(canonical.trimEnd());
    expect(stdout.split("\n").length).toBeGreaterThan(50);
  });

  test("colours on a terminal, and not where NO_COLOR is set, the terminal is dumb, or there is none", async () => {
    const colour = "\u001b[";
    const stdoutOf = async (env: Readonly<Record<string, string>>, terminal = true) =>
      (await run(["plan", "wrenfield.ts"], fakeIo({ terminal, env }))).stdout;
    expect(await stdoutOf({})).toContain(colour);
    expect(await stdoutOf({ NO_COLOR: "" })).toContain(colour);
    expect(await stdoutOf({ NO_COLOR: "1" })).not.toContain(colour);
    expect(await stdoutOf({ TERM: "dumb" })).not.toContain(colour);
    expect(await stdoutOf({}, false)).not.toContain(colour);
  });

  test("of a model with an error is printed, opens with the refusal and exits with 1", async () => {
    const { exitCode, stdout, stderr } = await run(["plan", "too-far.ts"]);
    expect([exitCode, stderr]).toEqual([1, ""]);
    expect(stdout.split("\n", 1)).toEqual(["DO NOT ENTER THIS PLAN: it has 1 error."]);
  });

  test("of a malformed model prints no data, tells the findings and exits with 1", async () => {
    const { exitCode, stdout, stderr } = await run(["plan", "misspelt.json", "--format", "json"]);
    expect([exitCode, stdout]).toEqual([1, ""]);
    expect(stderr).toBe(findingsToText(modelFindings(malformed)));
  });

  test("of what is no model prints no data, tells why in one sentence and exits with 2", async () => {
    expect(await run(["plan", "list.json"])).toEqual({
      exitCode: 2,
      stdout: "",
      stderr:
        'hingeline: list.json is no model: it does not say that it is one; a model has "format": "hingeline/model".\n',
    });
  });
});

describe("plan --out", () => {
  test("writes nothing of a model that does not compile: a millimetre where a degree is wanted would be taken for one", async () => {
    const io = fakeIo();
    const { exitCode, stdout, stderr } = await run(["plan", "wrong-unit.ts", "--out", "out.json"], io);
    expect([exitCode, stdout]).toEqual([1, ""]);
    expect(stderr).toMatch(/ERROR +wrong-unit\.ts:34:\d+ \(does-not-compile\)[\s\S]*millimetres/);
    expect(stderr).toMatch(/\nNothing was written to out\.json\.\n$/);
    expect(io.disk.size).toBe(0);
  });

  const args = ["plan", "wrenfield.ts", "--format", "json", "--out", "out.json"];

  test("writes the file and leaves nothing beside it", async () => {
    const io = fakeIo();
    expect(await run(args, io)).toEqual({
      exitCode: 0,
      stdout: "",
      stderr: `Wrote out.json: ${countFindings(compile(wrenfield).findings)}.\n`,
    });
    expect([...io.disk]).toEqual([[out, canonical]]);
  });

  test("replaces a file that is there", async () => {
    const io = fakeIo({ disk: new Map([[out, "before"]]) });
    expect((await run(args, io)).exitCode).toBe(0);
    expect([...io.disk]).toEqual([[out, canonical]]);
  });

  test("writes no colour, even from a terminal", async () => {
    const io = fakeIo({ terminal: true });
    await run(["plan", "wrenfield.ts", "--out", "out.txt"], io);
    expect(io.disk.get(`${fixtures}out.txt`)).toBe(planToText(compile(wrenfield)));
  });

  test.each(["writeNew", "rename"] as const)("leaves what was there where %s fails", async (call) => {
    const io = fakeIo({ disk: new Map([[out, "before"]]), broken: { call, code: "ENOSPC" } });
    expect(await run(args, io)).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: out.json cannot be written: the disk is full.\n",
    });
    expect([...io.disk]).toEqual([[out, "before"]]);
  });

  test("refuses a folder", async () => {
    const io = fakeIo({ folders: [out] });
    expect(await run(args, io)).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: out.json is a folder; name a file in it.\n",
    });
    expect(io.disk.size).toBe(0);
  });

  test.each(["mine.ts", "other.ts", "new.mts", "new.JS", "new.mjs"])(
    "never writes over a model: %s is refused before anything is read",
    async (name) => {
      const mine = readFileSync(`${fixtures}wrenfield.ts`, "utf8");
      const disk = new Map(["mine.ts", "other.ts"].map((file) => [fixtures + file, mine]));
      const before = [...disk];
      const { exitCode, stdout, stderr } = await run(["plan", "mine.ts", "--out", name], fakeIo({ disk }));
      expect([exitCode, stdout, [...disk]]).toEqual([2, "", before]);
      expect(stderr).toMatch(
        name === "mine.ts"
          ? /^hingeline: --out mine\.ts would write over mine\.ts, which is read/
          : /^hingeline: --out .* is the name of a model file/,
      );
      expect((await run(["plan", "gone.ts", "--out", name], fakeIo({ disk }))).stderr).toContain("--out");
    },
  );

  test("never writes over a model in JSON, by another name, nor through a link to any model", async () => {
    const text = JSON.stringify(wrenfield);
    const [mine, link] = [`${fixtures}mine.json`, `${fixtures}link.json`];
    for (const [real, name] of [
      [mine, "../load/mine.json"],
      [mine, "link.json"],
      [`${fixtures}other.ts`, "link.json"],
    ] as const) {
      const disk = new Map([[mine, text]]);
      const io = { ...fakeIo({ disk }), realPath: async (path: string) => (path === link ? real : path) };
      const { exitCode, stderr } = await run(["plan", "mine.json", "--out", name], io);
      expect([exitCode, [...disk]]).toEqual([2, [[mine, text]]]);
      expect(stderr).toContain(`--out ${name} `);
    }
  });

  test("writes nothing where the plan has an error", async () => {
    const io = fakeIo({ disk: new Map([[out, "before"]]) });
    const { exitCode, stdout, stderr } = await run(["plan", "too-far.ts", "--out", "out.json"], io);
    expect([exitCode, stdout, [...io.disk]]).toEqual([1, "", [[out, "before"]]]);
    const { findings } = compile(tooFar);
    const frames = await frameFindings("too-far.ts", findings, io);
    expect(stderr).toBe(`${findingsToText(findings, { frames })}\nNothing was written to out.json.\n`);
  });

  test.each(["misspelt.json", "throws.ts", "empty.json", "gone.ts"])(
    "writes nothing for %s",
    async (path) => {
      const io = fakeIo({ disk: new Map([[out, "before"]]) });
      const { exitCode } = await run(["plan", path, "--out", "out.json"], io);
      expect([exitCode > 0, [...io.disk]]).toEqual([true, [[out, "before"]]]);
    },
  );
});

test("--format markdown prints the sheet's Markdown", async () => {
  const sheet = await run(["sheet", "wrenfield.ts", "--format", "markdown"]);
  expect(await run(["plan", "wrenfield.ts", "--format", "markdown"])).toEqual(sheet);
});
