import { readFileSync } from "node:fs";
import { join } from "node:path";
import bramblehook from "@hingeline/examples/bramblehook";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startBrowser } from "../browser/browser.ts";
import { root } from "./pack.ts";

// `npm test` builds first; this needs the build.

const entry = `
  import { canonicalJson, compile } from "@hingeline/core";
  import { parseModel } from "@hingeline/core/schema";
  globalThis.planOf = (json) => {
    const plan = compile(parseModel(JSON.parse(json)).model);
    return { shown: JSON.stringify(plan, undefined, 2) + "\\n", canonical: canonicalJson(plan) };
  };
`;

let browser: Awaited<ReturnType<typeof startBrowser>>;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** The built packages in one script for a browser, nothing put in the place of anything. */
async function bundle(): Promise<string> {
  const { outputFiles, warnings } = await build({
    stdin: { contents: entry, resolveDir: root },
    bundle: true,
    platform: "browser",
    format: "iife",
    minify: true,
    write: false,
    logLevel: "silent",
    // Without the paths of this repository, which lead to the sources.
    tsconfigRaw: {},
  });
  // The bundler says what it drops of files without side effects, and only where they lie outside node_modules.
  expect(warnings.filter(({ id }) => id !== "ignored-bare-import")).toEqual([]);
  return outputFiles[0]?.text ?? "";
}

test("the core compiles a model in a browser to the committed plan", async () => {
  const page = await browser.newPage();
  const strays: string[] = [];
  page.on("console", (message) => strays.push(message.text()));
  page.on("pageerror", (error) => strays.push(error.message));
  page.on("request", (request) => strays.push(request.url()));
  await page.addScriptTag({ content: await bundle() });
  const argument = JSON.stringify(JSON.stringify(bramblehook));
  const plan = await page.evaluate<{ shown: string; canonical: string }>(`planOf(${argument})`);
  await page.close();
  const committed = readFileSync(join(root, "test/golden/bramblehook.plan.json"), "utf8");
  const numbers = /-?\d+(?:\.\d+)?(?:e[-+]\d+)?/g;
  expect(plan.shown.replace(numbers, "0")).toBe(committed.replace(numbers, "0"));
  // Engines differ in the last digit of Math.sin, Math.cos and powers, and a fit to readings carries it on.
  const expected = (committed.match(numbers) ?? []).map(Number);
  (plan.shown.match(numbers) ?? []).forEach((number, index) => {
    const wanted = expected[index] ?? Number.NaN;
    expect(Math.abs(Number(number) - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(wanted)));
  });
  expect(JSON.parse(plan.canonical)).toEqual(JSON.parse(plan.shown));
  expect(strays).toEqual([]);
}, 120_000);
