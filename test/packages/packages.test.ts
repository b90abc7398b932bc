import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Packed, pack, root, run } from "./pack.ts";

// `npm test` builds first; this needs the build.

const names = ["core", "dsl"] as const;
const packed = new Map<string, Packed>();
let folder = "";
/** The empty project of a stranger, outside this repository. */
let project = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-packages-"));
  for (const name of names) packed.set(name, pack(name, folder));
  project = join(folder, "project");
  cpSync(join(root, "test/fixtures/stranger"), project, { recursive: true });
  writeFileSync(join(project, "package.json"), JSON.stringify({ private: true, type: "module" }));
  const install = ["install", "--prefer-offline", "--no-audit", "--no-fund", ...names.map(tarballOf)];
  const { status, stderr } = run("npm", install, project);
  if (status !== 0) throw new Error(`installing the tarballs failed: ${stderr}`);
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const tarballOf = (name: string) => packed.get(name)?.file ?? "";
const tool = (name: string) => join(root, "node_modules/.bin", name);
const manifestOf = (name: string) =>
  JSON.parse(readFileSync(join(project, "node_modules/@hingeline", name, "package.json"), "utf8"));

describe("what is packed", () => {
  test("of the core is its two entries, what they share, and the papers", () => {
    expect(foldedContents("core")).toEqual([
      "LICENSE",
      "README.md",
      "dist/*.d.ts",
      "dist/*.js",
      "dist/compile/compile.js",
      "dist/findings/sentences.js",
      "dist/index.d.ts",
      "dist/index.js",
      "dist/linkage/drives.js",
      "dist/linkage/size.js",
      "dist/plan/fingerprint.js",
      "dist/plan/verify/plan-faults.js",
      "dist/response/least-squares.js",
      "dist/schema.d.ts",
      "dist/schema.js",
      "dist/signal/percent.js",
      "dist/units/conversions.js",
      "package.json",
    ]);
  });

  test("of the dsl is its four entries, the command line and the papers", () => {
    expect(foldedContents("dsl")).toEqual([
      "LICENSE",
      "README.md",
      "bin/hingeline.mjs",
      "dist-cli/*.js",
      "dist-cli/bin.js",
      "dist/*.js",
      "dist/index.d.ts",
      "dist/index.js",
      "dist/render/index.d.ts",
      "dist/render/index.js",
      "dist/render/sheet/index.d.ts",
      "dist/render/sheet/index.js",
      "dist/source/index.d.ts",
      "dist/source/index.js",
      "package.json",
    ]);
  });

  test("asks for the very core it was built with, and for nothing of a workspace", () => {
    expect(manifestOf("dsl").dependencies["@hingeline/core"]).toBe(manifestOf("core").version);
    for (const name of names) expect(JSON.stringify(manifestOf(name))).not.toContain("workspace:");
  });

  test.each(names)("of %s says what a registry shows", (name) => {
    expect(manifestOf(name)).toMatchObject({
      type: "module",
      sideEffects: false,
      license: "MIT",
      keywords: expect.arrayContaining(["model-aircraft"]),
      engines: { node: ">=20" },
      publishConfig: { access: "public" },
    });
    const readme = readFileSync(join(project, "node_modules/@hingeline", name, "README.md"), "utf8");
    expect(readme.split("\n\n")[0]).toBe(`# @hingeline/${name}`);
  });

  test.each(names)("of %s leaves publint nothing to say", (name) => {
    const { status, stdout } = run(tool("publint"), ["run", tarballOf(name), "--strict"], folder);
    expect(stdout).toContain("All good!");
    expect(status).toBe(0);
  });

  test.each(names)("of %s has types that are right for every way of resolving modules", (name) => {
    const args = [tarballOf(name), "--profile", "esm-only", "--format", "json"];
    const { status, stdout } = run(tool("attw"), args, folder);
    // Old resolution by folders and require() from CommonJS are not offered.
    const offered = ["node16-esm", "bundler"];
    const { analysis } = JSON.parse(stdout) as Analysis;
    expect(Object.keys(analysis.entrypoints).length).toBe(name === "core" ? 2 : 4);
    expect(
      analysis.problems.filter(({ resolutionKind = "bundler" }) => offered.includes(resolutionKind)),
    ).toEqual([]);
    expect(status).toBe(0);
  });
});

interface Analysis {
  readonly analysis: {
    readonly entrypoints: Readonly<Record<string, unknown>>;
    readonly problems: readonly { readonly kind: string; readonly resolutionKind?: string }[];
  };
}

/** The contents, each file whose name ends in a hash of its text as a star. */
function foldedContents(name: string): readonly string[] {
  const folded = (packed.get(name)?.contents ?? []).map((path) =>
    path.replace(/[^/]+-[\w-]{8}(\.d\.ts|\.js)$/, "*$1"),
  );
  return [...new Set(folded)].sort();
}

const readmes = names.flatMap((name) => {
  const text = readFileSync(join(root, "packages", name, "README.md"), "utf8");
  return [...text.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code = ""], index) => ({
    name: `readme-${name}-${index}.ts`,
    code,
  }));
});

describe("in an empty project", () => {
  const hingeline = (...args: string[]) => run("node_modules/.bin/hingeline", args, project);

  test("every entry works, on a model of two surfaces", () => {
    const { status, stdout, stderr } = run(process.execPath, ["compile.mjs"], project);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    // Both surfaces are asked for a deflection that was read: the pulse is that of the reading.
    expect(JSON.parse(stdout)).toEqual({
      exactUs: [1400, 1650],
      fromJson: true,
      text: "SETUP PLAN   Two surfaces",
      sheet: "<!doctype html>",
      source: "function",
    });
  });

  test("the command line plans a model file", () => {
    const { status, stdout, stderr } = hingeline("plan", "model.ts");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("Stranger's glider");
    expect(stdout).toMatch(/flap at landing +\+38\.0/);
  });

  test("the command line names the line of the model file that fails", () => {
    const { status, stderr } = hingeline("plan", "broken.ts");
    expect(stderr).toContain("broken.ts, line 17");
    expect(stderr).toContain("missing is not defined");
    expect(status).toBe(2);
  });

  test("check finds what does not compile with the types it brought along, and nothing in a sound model", () => {
    const slip = hingeline("check", "slip.ts");
    expect(slip.stdout).toContain("ERROR  slip.ts:21:18 (does-not-compile)\n");
    expect(slip.stdout).toContain('Did you mean "flaps"?');
    expect(slip.status).toBe(1);
    expect(hingeline("check", "model.ts").status).toBe(0);
  });

  test("the READMEs' code and a model type-check, and slips are errors at their very places", () => {
    for (const { name, code } of readmes) writeFileSync(join(project, name), code);
    const { stdout } = run(tool("tsc"), ["-p", ".", "--pretty", "false"], project);
    const errors = stdout.split("\n").filter((line) => line.includes("error TS"));
    expect(readmes.length).toBeGreaterThanOrEqual(3);
    expect(errors).toEqual([
      expect.stringMatching(/^broken\.ts\(17,30\): error TS2304: Cannot find name 'missing'/),
      expect.stringMatching(/^slip\.ts\(21,18\): error TS2561: .*'flpas'.*Did you mean to write 'flaps'/),
    ]);
  });

  test("the core README's first lines print what they say", () => {
    const code = readmes.find(({ name }) => name === "readme-core-0.ts")?.code ?? "";
    const said = /; \/\/ (.*)/.exec(code)?.[1];
    writeFileSync(join(project, "readme.mjs"), code);
    expect(run(process.execPath, ["readme.mjs"], project).stdout).toBe(`${said}\n`);
  });

  test.each(["@hingeline/core/dist/index.js", "@hingeline/core/compile", "@hingeline/dsl/declare"])(
    "%s is no entry and cannot be imported",
    (path) => {
      const { stderr } = run(process.execPath, ["--input-type=module", "-e", `import "${path}"`], project);
      expect(stderr).toContain("ERR_PACKAGE_PATH_NOT_EXPORTED");
    },
  );
});
