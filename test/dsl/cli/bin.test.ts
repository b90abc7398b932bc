import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { canonicalJson, compile } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { beforeAll, describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../../..");
const bin = join(root, "packages/dsl/bin/hingeline.mjs");
const example = join(root, "packages/examples/src/bramblehook.ts");
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "hingeline-"));
});

/** Runs the built command as a user would. */
function hingeline(args: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...args], {
    cwd: folder,
    input,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

function modelFile(name: string, text: string): string {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
}

// `npm test` builds first; this needs the build.
describe("the built command", () => {
  test("prints the canonical plan of a .ts model, of its JSON and of standard input, the same bytes", () => {
    const expected = `${canonicalJson(compile(bramblehook))}\n`;
    expect(hingeline(["plan", example, "--format", "json"])).toEqual({
      status: 0,
      stdout: expected,
      stderr: "",
    });
    const json = modelFile("tug.json", JSON.stringify(bramblehook));
    expect(hingeline(["plan", json, "--format", "json"]).stdout).toBe(expected);
    expect(hingeline(["plan", "-", "--format", "json"], JSON.stringify(bramblehook)).stdout).toBe(expected);
  });

  test("works on a model file far from any node_modules, in a folder with a space", () => {
    const text = readFileSync(example, "utf8");
    const file = modelFile("my tug.ts", text);
    expect(hingeline(["check", file]).status).toBe(0);
  });

  test("keeps what a model file prints out of the data, and survives its process.exit", () => {
    const chatty = modelFile("chatty.ts", `console.log("hello");\n${readFileSync(example, "utf8")}`);
    const { stdout, stderr } = hingeline(["plan", chatty, "--format", "json"]);
    expect(JSON.parse(stdout)).toHaveProperty("model", "Bramblehook 26");
    expect(stderr).toContain("hello");
    const quitter = modelFile("quitter.ts", "process.exit(0);");
    expect(hingeline(["plan", quitter])).toMatchObject({ status: 2, stdout: "" });
  });

  test("writes a plan that `check --against` then finds fresh, and stale once the model changes", () => {
    const json = JSON.stringify(bramblehook);
    const file = modelFile("tug.json", json);
    expect(hingeline(["plan", file, "--format", "json", "--out", "plan.json"]).status).toBe(0);
    expect(hingeline(["check", file, "--against", "plan.json"]).status).toBe(0);
    modelFile("tug.json", json.replace('"takeoff":{"flaps":14}', '"takeoff":{"flaps":16}'));
    const stale = hingeline(["check", file, "--against", "plan.json"]);
    expect(stale.status).toBe(1);
    expect(stale.stdout + stale.stderr).toMatch(/channel.* 5/i);
  });

  test("a wrong unit in the JSON form comes as one finding with its address, exit 1, no stack trace", () => {
    const file = modelFile("wrong.json", JSON.stringify(bramblehook).replace('"chord":96', '"chord":0.096'));
    const { status, stdout, stderr } = hingeline(["check", file]);
    expect(status).toBe(1);
    expect(stdout).toContain("surfaces.flapLeft.chord");
    expect(stdout + stderr).not.toMatch(/\n\s+at /);
  });

  test("a file that is no model, or is not there, is exit 2 and one sentence", () => {
    for (const args of [
      ["plan", modelFile("empty.ts", "")],
      ["plan", "nowhere.ts"],
      ["plan", modelFile("throws.ts", 'throw new Error("oops");')],
    ]) {
      const { status, stdout, stderr } = hingeline(args);
      expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
      expect(stderr).toMatch(/^hingeline: .*(\n {11}\S.*)*\n$/);
    }
  });
});
