import { readFileSync } from "node:fs";
import { canonicalJson, compile, type SetupPlan } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { comparePlans } from "../../../packages/dsl/src/cli/compare-plans.ts";
import { frameFindings } from "../../../packages/dsl/src/cli/frame-findings.ts";
import { findingsToText } from "../../../packages/dsl/src/render/findings-to-text.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { tooFar, wrenfield } from "./wrenfield.ts";

const plan = compile(wrenfield);
const [channel] = plan.channels;
// None of severity error; what notes there are is for the compiler to say.
const findings = findingsToText(plan.findings);
const findingsJson = canonicalJson(plan.findings);

describe("check", () => {
  test("of a model without errors prints the counts and exits with 0", async () => {
    expect(await run(["check", "wrenfield.ts"])).toEqual({
      exitCode: 0,
      stdout: findings,
      stderr: "",
    });
  });

  test("of a model with an error prints it with what to do and exits with 1", async () => {
    const { exitCode, stdout, stderr } = await run(["check", "too-far.ts"]);
    expect([exitCode, stderr]).toEqual([1, ""]);
    const { findings } = compile(tooFar);
    const frames = await frameFindings("too-far.ts", findings, fakeIo());
    expect(stdout).toBe(findingsToText(findings, { frames }));
    expect(stdout).toMatch(/^1 error, .*\n\nERROR {2}moves\.lever\.landing\.flap \(limit-passed\)\n/);
  });

  test("--format json prints canonical JSON, of a malformed model too", async () => {
    for (const path of ["wrenfield.ts", "too-far.ts", "misspelt.json"]) {
      const { exitCode, stdout, stderr } = await run(["check", path, "--format", "json"]);
      const data = JSON.parse(stdout) as { findings: SetupPlan["findings"] };
      expect([exitCode, stderr]).toEqual([path === "wrenfield.ts" ? 0 : 1, ""]);
      expect(stdout).toBe(`${canonicalJson(data)}\n`);
      expect(Object.keys(data)).toEqual(["findings"]);
      expect(data.findings.some(({ severity }) => severity === "error")).toBe(exitCode === 1);
    }
  });
});

describe("check --against", () => {
  const against = (committed: unknown, format: "text" | "json" = "text") =>
    run(
      ["check", "wrenfield.ts", "--against", "plan.json", "--format", format],
      fakeIo({ disk: new Map([[`${fixtures}plan.json`, JSON.stringify(committed, undefined, 2)]]) }),
    );

  test("the model's own plan, in whatever lay-out, says that it is up to date", async () => {
    expect(await against(plan)).toEqual({
      exitCode: 0,
      stdout: `${findings}\nplan.json is up to date.\n`,
      stderr: "",
    });
    expect((await against(plan, "json")).stdout).toBe(`{"findings":${findingsJson},"stale":null}\n`);
  });

  test("another plan names the channels and parts that differ and exits with 1", async () => {
    const stale = {
      ...plan,
      model: "Wrenfield 21",
      channels: [
        { ...channel, neutral: { percent: 1, pulseUs: 1505, sharePercent: 2 } },
        { ...channel, channel: 9 },
      ],
    };
    expect(await against(stale)).toEqual({
      exitCode: 1,
      stdout: `${findings}\nplan.json is STALE; what differs: channels 1, 9; "model".\n`,
      stderr: "",
    });
    expect((await against(stale, "json")).stdout).toBe(
      `{"findings":${findingsJson},"stale":{"channels":[1,9],"parts":["model"]}}\n`,
    );
  });

  test.each([
    ["text", "is no setup plan: the document: expected an object"],
    [{ ...plan, version: 2 }, "is no setup plan: version: expected 1"],
    [{ ...plan, model: "\ud800" }, "is no setup plan: it holds half a surrogate pair."],
  ])("what is no plan exits with 2 in one sentence: %#", async (committed, sentence) => {
    const { exitCode, stdout, stderr } = await against(committed);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`hingeline: plan.json ${sentence}`);
    expect(stderr.split("\n")).toHaveLength(2);
  });

  test("model and plan cannot both come from standard input", async () => {
    const stdin = JSON.stringify(wrenfield);
    expect(await run(["check", "-", "--against", "-"], fakeIo({ stdin }))).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: Only one of the two can come from standard input.\n",
    });
  });

  test("a plan that does not exist exits with 2", async () => {
    expect(await run(["check", "wrenfield.ts", "--against", "gone.json"])).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: gone.json does not exist.\n",
    });
  });
});

describe("comparePlans", () => {
  const two = { ...plan, channels: plan.channels.flatMap((one) => [one, { ...one, channel: 2 }]) };

  test("of a plan with itself is undefined", () => {
    expect(comparePlans(two, JSON.parse(JSON.stringify(two)) as SetupPlan)).toBeUndefined();
  });

  test("finds channels that only changed places", () => {
    expect(comparePlans(two, { ...two, channels: two.channels.toReversed() })).toEqual({
      channels: [],
      parts: ["channels"],
    });
  });
});

describe("check --format sarif", () => {
  test("names the file and the line of each finding, and exits as the text does", async () => {
    const { exitCode, stdout, stderr } = await run(["check", "too-far.ts", "--format", "sarif"]);
    expect([exitCode, stderr]).toEqual([1, ""]);
    const { runs } = JSON.parse(stdout) as {
      runs: { results: { ruleId: string; locations: { physicalLocation: object }[] }[] }[];
    };
    const passed = runs[0]?.results.find(({ ruleId }) => ruleId === "limit-passed");
    expect(passed?.locations[0]?.physicalLocation).toMatchObject({
      artifactLocation: { uri: "too-far.ts" },
      region: { startLine: expect.any(Number), startColumn: expect.any(Number) },
    });
  });

  test("holds a stale plan as a result of its own", async () => {
    const disk = new Map([[`${fixtures}plan.json`, JSON.stringify({ ...plan, model: "Other" })]]);
    const args = ["check", "wrenfield.ts", "--against", "plan.json", "--format", "sarif"];
    const { exitCode, stdout } = await run(args, fakeIo({ disk }));
    expect(exitCode).toBe(1);
    expect(stdout).toContain('"ruleId":"plan-stale"');
    expect(stdout).toContain("plan.json is STALE");
  });
});

describe("check of a file that does not compile", () => {
  const slip = readFileSync(`${fixtures}wrenfield.ts`, "utf8")
    .replace("deg, model", "deg, mm, model")
    .replace("landing: { flap: deg(25) }", "landing: { flap: mm(25) }");
  const io = () => {
    const files = { "slip.ts": slip, "plan.json": JSON.stringify(plan) };
    return fakeIo({ disk: new Map(Object.entries(files).map(([name, text]) => [fixtures + name, text])) });
  };
  const check = (...options: readonly string[]) => run(["check", "slip.ts", ...options], io());

  test("shows the line and what to do, runs nothing and compares nothing, and exits with 1", async () => {
    for (const options of [[], ["--static"], ["--against", "plan.json"]])
      expect(await check(...options)).toEqual({
        exitCode: 1,
        stdout: `1 error, no warnings, no notes.

ERROR  slip.ts:34:86 (does-not-compile)
  A value in millimetres stands where one in degrees is wanted.
  -> Write it as deg(…) or atThrow(mm(…)).
  34 | …ap: deg(0) }, takeoff: { flap: deg(12) }, landing: { flap: mm(25) } } },
     |                                                       ^^^^
`,
        stderr: "",
      });
  });

  test("names the place in JSON and in SARIF, where it is no address of the model", async () => {
    const { findings } = JSON.parse((await check("--format", "json")).stdout) as {
      findings: SetupPlan["findings"];
    };
    expect(findings).toEqual([
      {
        code: "does-not-compile",
        severity: "error",
        at: "slip.ts:34:86",
        message: "A value in millimetres stands where one in degrees is wanted.",
        do: "Write it as deg(…) or atThrow(mm(…)).",
        numbers: {},
      },
    ]);
    const { runs } = JSON.parse((await check("--format", "sarif")).stdout) as {
      runs: { results: { ruleId: string; locations: object[] }[] }[];
    };
    expect(runs[0]?.results).toMatchObject([{ ruleId: "does-not-compile" }]);
    expect(runs[0]?.results[0]?.locations).toEqual([
      {
        physicalLocation: {
          artifactLocation: { uri: "slip.ts" },
          region: { startLine: 34, startColumn: 86, endLine: 34, endColumn: 90 },
          contextRegion: { startLine: 34, snippet: { text: slip.split("\n")[33] } },
        },
      },
    ]);
  });

  test("is not noticed under --no-types, nor by plan", async () => {
    expect(await check("--static", "--no-types")).toEqual({ exitCode: 0, stdout: findings, stderr: "" });
    expect(await run(["plan", "slip.ts", "--static"], io())).toMatchObject({ exitCode: 0 });
  });
});
