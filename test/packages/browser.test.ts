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

test("the core compiles a model in a browser to the very bytes of the committed plan", async () => {
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
  expect(plan.shown).toBe(committed);
  expect(JSON.parse(plan.canonical)).toEqual(JSON.parse(plan.shown));
  expect(strays).toEqual([]);
}, 120_000);
