import { readFileSync } from "node:fs";
import type { Finding } from "@hingeline/core";
import { Ajv } from "ajv";
import { describe, expect, test } from "vitest";
import { findingsToSarif } from "../../../packages/dsl/src/render/findings-to-sarif.ts";

// JSON Schema of SARIF 2.1.0; where it comes from stands in the fixture. Its draft-04 words mean the same in draft-07.
const { schema } = JSON.parse(
  readFileSync(new URL("../../fixtures/sarif-2.1.0.json", import.meta.url), "utf8"),
) as { schema: Record<string, unknown> };
const { $schema: _dialect, id: _id, ...draft07 } = schema;
const validate = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(draft07);

const finding: Finding = {
  code: "limit-passed",
  severity: "error",
  at: "moves.flap.landing.flap",
  message: "Too far.",
  do: "Ask for less.",
  numbers: { pulseUs: 1190 },
};
const place = {
  file: "models/my tug.ts",
  line: 3,
  column: 5,
  endLine: 3,
  endColumn: 7,
  sourceLine: "    42,",
};
const options = { model: "models/my tug.ts", version: "1.2.3" };

interface Log {
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly rules: readonly { readonly id: string }[] } };
    readonly results: readonly {
      readonly ruleId: string;
      readonly ruleIndex: number;
      readonly level: string;
      readonly message: { readonly text: string };
      readonly locations: readonly {
        readonly physicalLocation?: {
          readonly artifactLocation: { readonly uri: string };
          readonly region: object;
        };
        readonly logicalLocations?: readonly object[];
      }[];
    }[];
  }[];
}

function logOf(...args: Parameters<typeof findingsToSarif>): Log["runs"][number] {
  const log = JSON.parse(findingsToSarif(...args)) as Log;
  expect(validate(log), JSON.stringify(validate.errors)).toBe(true);
  const [run] = log.runs;
  if (run === undefined) throw new Error("a log without a run");
  return run;
}

test("the schema refuses what is no log of SARIF 2.1.0", () => {
  const log = JSON.parse(findingsToSarif([finding], options)) as Record<string, unknown>;
  expect(validate({ ...log, version: "2.0.0" })).toBe(false);
  expect(validate({ ...log, runs: [{ tool: {} }] })).toBe(false);
});

describe("findingsToSarif", () => {
  test("gives each finding its rule, level, sentences, place and address", () => {
    const run = logOf([finding], { ...options, places: new Map([[finding.at, place]]) });
    expect(run.tool.driver.rules.map(({ id }) => id)).toEqual(["limit-passed"]);
    expect(run.results).toMatchObject([
      {
        ruleId: "limit-passed",
        ruleIndex: 0,
        level: "error",
        message: { text: "Too far. Ask for less." },
        locations: [
          {
            physicalLocation: {
              artifactLocation: { uri: "models/my%20tug.ts" },
              region: { startLine: 3, startColumn: 5, endLine: 3, endColumn: 7 },
              contextRegion: { startLine: 3, snippet: { text: "    42," } },
            },
            logicalLocations: [{ fullyQualifiedName: "moves.flap.landing.flap" }],
          },
        ],
        properties: { numbers: { pulseUs: 1190 } },
      },
    ]);
  });

  test("shows a finding without a place at the top of the model file", () => {
    const [result] = logOf([{ ...finding, at: "" }], options).results;
    expect(result?.locations).toEqual([
      {
        physicalLocation: {
          artifactLocation: { uri: "models/my%20tug.ts" },
          region: { startLine: 1 },
        },
      },
    ]);
  });

  test("names no file for a model on standard input", () => {
    const [result] = logOf([finding], { ...options, model: undefined }).results;
    expect(result?.locations).toEqual([{ logicalLocations: [{ fullyQualifiedName: finding.at }] }]);
  });

  test("lists each rule once, and each result points at its own", () => {
    const note: Finding = { ...finding, code: "half-pulse", severity: "note" };
    const run = logOf([finding, note, finding], options);
    const ids = run.tool.driver.rules.map(({ id }) => id);
    expect(ids).toEqual(["limit-passed", "half-pulse"]);
    expect(run.results.map(({ ruleIndex }) => ids[ruleIndex])).toEqual(
      run.results.map(({ ruleId }) => ruleId),
    );
    expect(run.results.map(({ level }) => level)).toEqual(["error", "note", "error"]);
  });

  test("reports a stale plan on the plan's own file", () => {
    const stale = { plan: "tug.plan.json", message: "tug.plan.json is STALE." };
    const run = logOf([], { ...options, stale });
    expect(run.results).toMatchObject([
      {
        ruleId: "plan-stale",
        level: "error",
        message: { text: "tug.plan.json is STALE." },
        locations: [{ physicalLocation: { artifactLocation: { uri: "tug.plan.json" } } }],
      },
    ]);
  });

  test("is a log without results where nothing was found", () => {
    expect(logOf([], options)).toMatchObject({ tool: { driver: { rules: [] } }, results: [] });
  });

  test.each([
    ["/home/me/my tug.ts", "file:///home/me/my%20tug.ts"],
    ["C:\\models\\my tug.ts", "file:///C:/models/my%20tug.ts"],
    ["c:/models/tug.ts", "file:///c:/models/tug.ts"],
    ["models\\tug.ts", "models/tug.ts"],
    ["C:tug.ts", "C%3Atug.ts"],
  ])("writes %s as the URI %s", (model, uri) => {
    const [result] = logOf([finding], { ...options, model }).results;
    expect(result?.locations[0]?.physicalLocation?.artifactLocation.uri).toBe(uri);
  });

  test("names a run by the model's path with slashes on every system", () => {
    expect(logOf([], { ...options, model: "C:\\models\\tug.ts" })).toMatchObject({
      automationDetails: { id: "hingeline/C:/models/tug.ts/" },
    });
  });
});
