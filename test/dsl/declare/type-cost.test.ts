import { expect, test } from "vitest";
import { checkSource } from "./check-source.ts";

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

const none = checkSource(
  `${imports}export default [deg, matched, model, mm, mps, pct, per, s, selector, stick, us];`,
);
const [two, five, fifty, twoHundred] = [2, 5, 50, 200].map((count) => checkSource(sourceOf(count)));
const cost = (from: typeof none | undefined, to: typeof none | undefined) =>
  (to?.instantiations ?? Number.NaN) - (from?.instantiations ?? Number.NaN);

test("generated models of 2, 5, 50 and 200 surfaces compile", () => {
  expect([none, two, five, fifty, twoHundred].map((one) => one?.errors)).toEqual([[], [], [], [], []]);
});

test("a model costs at most 3,000 type instantiations", () => {
  expect(cost(none, two)).toBeGreaterThan(0);
  expect(cost(none, two)).toBeLessThan(3000);
});

test("each surface costs at most 150 more, as many in a large model as in a small one", () => {
  const [small, large] = [cost(five, fifty) / 45, cost(fifty, twoHundred) / 150];
  expect(small).toBeLessThan(150);
  expect(large).toBeLessThan(150);
  expect(large / small).toBeLessThan(1.1);
  expect(large / small).toBeGreaterThan(0.9);
});
