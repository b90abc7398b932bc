import { compile, type Model } from "@hingeline/core";
import * as dsl from "@hingeline/dsl";
import { planToText } from "@hingeline/dsl/render";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { pageAt } from "./pages.ts";
import { run, snippetsOf } from "./snippets.ts";

const page = pageAt("README.md");
const readme = page.text;

test("the README opens with one paragraph that states the job", () => {
  const [title, job] = readme.split("\n\n");
  expect(title).toBe("# hingeline");
  expect(job).toMatch(/setup plan|setup\nplan/);
  expect(job).toContain("never");
});

describe("what the README shows as output", () => {
  const text = planToText(compile(bramblehook));
  const excerpts = [...readme.matchAll(/<!-- excerpt: (.*?) -->\n```text\n([\s\S]*?)```/g)];

  test.each(excerpts.map(([, command = "", excerpt = ""]) => [command, excerpt]))(
    "%s prints it",
    (command, excerpt) => {
      expect(command).toBe("npx hingeline plan packages/examples/src/bramblehook.ts");
      expect(text).toContain(excerpt);
    },
  );

  test("is there at all", () => {
    expect(excerpts.length).toBeGreaterThanOrEqual(2);
  });
});

test("the README's own model has a plan without error or warning, on the channels that it names", async () => {
  const code = snippetsOf(page).find((one) => one.code.includes("export default model("))?.code ?? "";
  const { exported } = await run(code, { "@hingeline/dsl": dsl }, () =>
    Promise.reject(new Error("no network")),
  );
  const plan = compile(exported.default as Model);
  expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
  expect(plan.channels.map(({ channel }) => channel)).toEqual([5, 6]);
});
