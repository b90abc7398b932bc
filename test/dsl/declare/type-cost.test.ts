import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config,
  ts.sys,
  root,
);

/** Type instantiations and errors of a file that holds `source`, what checking its imports costs included. */
function check(source: string): { readonly instantiations: number; readonly errors: readonly string[] } {
  const name = `${root}test/dsl/declare/generated.ts`;
  const host = ts.createCompilerHost(options);
  const read = host.getSourceFile;
  host.getSourceFile = (file, version, ...rest) =>
    file === name ? ts.createSourceFile(file, source, version) : read(file, version, ...rest);
  host.fileExists = (file) => file === name || ts.sys.fileExists(file);
  const program = ts.createProgram([name], options, host);
  const diagnostics = program.getSemanticDiagnostics(program.getSourceFile(name));
  const errors = diagnostics.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
  return { instantiations: program.getInstantiationCount(), errors };
}

const imports =
  'import { deg, matched, model, mm, mps, pct, per, s, selector, stick, us } from "@hingeline/dsl";\n';

/** A model of `count` surfaces in pairs, each moved by a selector and by two sticks, one of them per phase. */
function sourceOf(count: number): string {
  const each = (text: (index: number) => string, length = count) =>
    Array.from({ length }, (_, i) => text(i)).join(" ");
  const bench = `bench: { up: us(1890), level: us(1872), down: us(1208), readings: [[us(1872), deg(0)], [us(1215), deg(41)]] }`;
  const detent = `{ ${each((i) => `s${i}: deg(${i}),`)} }`;
  const ends = `{ ${each((i) => `s${i}: [deg(-3), deg(3)],`)} }`;
  return `${imports}export default model("generated", {
    radio: { name: "r", centre: us(1500), per100: us(512), reach: pct(125), step: pct(0.1), endPoints: "clamp", curvePoints: 5 },
    surfaces: { ${each((i) => `s${i}: { chord: mm(62), servo: { channel: ${i}, ${bench} } },`)} },
    groups: { ${each((i) => `g${i}: matched(["s${2 * i}", "s${2 * i + 1}"], { within: deg(1) }),`, count / 2)} },
    controls: { flap: selector("stowed", "landing"), phase: selector("cruise", "thermal"), roll: stick(), pitch: stick() },
    moves: { flap: { stowed: ${detent}, landing: ${detent} }, pitch: ${ends}, roll: per("phase", { cruise: {}, thermal: ${ends} }) },
    transit: { flap: s(2.5) }, airspeed: { otherwise: mps(34), flap: { landing: mps(17) } }, failsafe: { flap: "landing" },
  });`;
}

test("a model costs at most 3,000 type instantiations and 150 more for each surface", () => {
  const none = check(
    `${imports}export default [deg, matched, model, mm, mps, pct, per, s, selector, stick, us];`,
  );
  const small = check(sourceOf(2));
  const large = check(sourceOf(50));
  expect([none.errors, small.errors, large.errors]).toEqual([[], [], []]);
  expect(small.instantiations).toBeGreaterThan(none.instantiations);
  expect(small.instantiations - none.instantiations).toBeLessThan(3000);
  expect((large.instantiations - small.instantiations) / 48).toBeLessThan(150);
});
