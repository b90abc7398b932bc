import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");

/** Layers from the lowest up; a file imports from lower layers and from its own folder only. */
const layers = {
  core: [
    ["units", "address", "numeric"],
    ["signal", "linkage", "surface", "uncertainty", "curve", "findings"],
    ["response", "model", "plan", "transmitter"],
    ["compile"],
  ],
  dsl: [["declare"], ["render", "source"], ["load", "measure"], ["cli"]],
} as const;

interface Import {
  readonly file: string;
  readonly from: string;
}

describe.each(Object.entries(layers))("packages/%s/src", (name, order) => {
  const src = join(root, "packages", name, "src");
  const imports = sourceFiles(src).flatMap(importsOf);

  test("has files and imports to look at", () => {
    expect(imports.length).toBeGreaterThan(20);
  });

  test("every folder has its layer", () => {
    const folders = readdirSync(src, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && sourceFiles(join(src, entry.name)).length > 0)
      .map(({ name: folder }) => folder);
    expect(folders.filter((folder) => layerOf(order, folder) < 0)).toEqual([]);
  });

  test("a file imports only from lower layers and its own folder, types included", () => {
    const wrong = imports.filter(({ file, from }) => {
      if (!from.startsWith(".")) return false;
      const here = folderOf(src, file);
      const there = folderOf(src, resolve(dirname(file), from));
      // Files beside the folders are the package's entries: they see everything, nothing sees them but each other.
      if (here === "") return false;
      return here !== there && layerOf(order, there) >= layerOf(order, here);
    });
    expect(wrong.map(describeImport)).toEqual([]);
  });

  test("there is no cycle between files", () => {
    const edges = new Map<string, string[]>();
    for (const { file, from } of imports)
      if (from.startsWith(".")) edges.set(file, [...(edges.get(file) ?? []), resolve(dirname(file), from)]);
    expect(findCycle(edges)).toBeUndefined();
  });
});

test("core imports nothing but itself, zod for its schemas only, and least squares", () => {
  const src = join(root, "packages/core/src");
  const foreign = sourceFiles(src)
    .flatMap(importsOf)
    .filter(({ from }) => !from.startsWith("."));
  expect(new Set(foreign.map(({ from }) => from))).toEqual(new Set(["zod", "ml-levenberg-marquardt"]));
  const withZod = foreign.filter(({ from }) => from === "zod").map(({ file }) => folderOf(src, file));
  expect(new Set(withZod)).toEqual(new Set(["model", "plan"]));
});

test("core has no clock, no chance, no environment and no console", () => {
  const banned =
    /\b(Date\.now|new Date\b|Math\.random|process\.|console\.|globalThis|Intl\.|performance\.)|\.toLocale/;
  const wrong = sourceFiles(join(root, "packages/core/src")).filter((file) => banned.test(code(file)));
  expect(wrong.map((file) => relative(root, file))).toEqual([]);
});

test("dsl sees core through its entries only, and only bin.ts touches process", () => {
  const files = sourceFiles(join(root, "packages/dsl/src"));
  const entries = new Set(["@hingeline/core", "@hingeline/core/schema"]);
  const wrong = files
    .flatMap(importsOf)
    .filter(({ from }) => from.includes("core") && !entries.has(from) && !from.startsWith("."));
  expect(wrong.map(describeImport)).toEqual([]);
  const touching = files.filter((file) => /\bprocess\b/.test(code(file))).map((file) => relative(root, file));
  expect(touching).toEqual(["packages/dsl/src/bin.ts"]);
});

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
}

function importsOf(file: string): Import[] {
  const pattern = /(?:from|import)\s*\(?\s*"([^"]+)"/g;
  return [...readFileSync(file, "utf8").matchAll(pattern)].map(([, from = ""]) => ({ file, from }));
}

/** The text of a file without its comments. */
function code(file: string): string {
  return readFileSync(file, "utf8").replaceAll(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "");
}

function folderOf(src: string, file: string): string {
  const [folder = "", rest] = relative(src, file).split("/");
  return rest === undefined ? "" : folder;
}

function layerOf(order: readonly (readonly string[])[], folder: string): number {
  return order.findIndex((layer) => layer.includes(folder));
}

function findCycle(edges: ReadonlyMap<string, readonly string[]>): string | undefined {
  const done = new Set<string>();
  const walk = (file: string, path: readonly string[]): string | undefined => {
    if (path.includes(file))
      return [...path.slice(path.indexOf(file)), file].map((one) => relative(root, one)).join(" -> ");
    if (done.has(file)) return undefined;
    for (const next of edges.get(file) ?? []) {
      const cycle = walk(next, [...path, file]);
      if (cycle !== undefined) return cycle;
    }
    done.add(file);
    return undefined;
  };
  for (const file of edges.keys()) {
    const cycle = walk(file, []);
    if (cycle !== undefined) return cycle;
  }
  return undefined;
}

function describeImport({ file, from }: Import): string {
  return `${relative(root, file)} -> ${from}`;
}
