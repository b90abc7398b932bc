import * as core from "@hingeline/core";
import { canonicalJson, compile, type Model } from "@hingeline/core";
import * as schema from "@hingeline/core/schema";
import * as dsl from "@hingeline/dsl";
import * as render from "@hingeline/dsl/render";
import * as sheet from "@hingeline/dsl/sheet";
import * as source from "@hingeline/dsl/source";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { allPages } from "./pages.ts";
import { problemsOf, run, saidToPrint, snippetsOf } from "./snippets.ts";

const modules = {
  "@hingeline/core": core,
  "@hingeline/core/schema": schema,
  "@hingeline/dsl": dsl,
  "@hingeline/dsl/render": render,
  "@hingeline/dsl/sheet": sheet,
  "@hingeline/dsl/source": source,
  "@hingeline/examples/bramblehook": { __esModule: true, default: bramblehook },
};
const snippets = allPages().flatMap(snippetsOf);
const named = snippets.map(
  (snippet, index) => [`${snippet.page}, block ${index + 1}`, snippet.code] as const,
);

describe("the TypeScript of every page", () => {
  test("is there, on the README and on those of both packages", () => {
    const pages = new Set(snippets.map(({ page }) => page));
    for (const page of ["README.md", "packages/core/README.md", "packages/dsl/README.md"])
      expect(pages).toContain(page);
  });

  test("type-checks", () => {
    expect(problemsOf(snippets.map(({ code }) => code))).toEqual([]);
  });

  test("is found wrong by the same check where it is wrong", () => {
    const spoilt = snippets.map(({ code }) =>
      code.replace("takeoff: { flaps: deg(15) }", "takeoff: { flapz: deg(15) }"),
    );
    expect(problemsOf(spoilt).join()).toContain("flapz");
  });

  test.each(named)("%s: runs, and prints what it says", async (_, code) => {
    const { exported, printed } = await run(code, modules, async () => ({ json: async () => bramblehook }));
    const said = saidToPrint(code);
    if (said.length > 0) expect(printed).toEqual(said);
    if ("default" in exported) {
      const plan = compile(exported.default as Model);
      expect(plan.findings.filter(({ severity }) => severity === "error")).toEqual([]);
      expect(plan.channels.length).toBeGreaterThan(0);
    }
  });
});

test("a model read from JSON, as the core's page does it, is the same plan", async () => {
  const code = snippets.find((one) => one.code.includes("parseModel"))?.code ?? "";
  const { printed } = await run(code, modules, async () => ({
    json: async () => JSON.parse(JSON.stringify(bramblehook)),
  }));
  expect(printed).toEqual([canonicalJson(compile(bramblehook))]);
});
