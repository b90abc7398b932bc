import { compile } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import slatewing from "@hingeline/examples/slatewing";
import { expect, test } from "vitest";
import { sheetToMarkdown } from "../../../../packages/dsl/src/render/sheet/sheet-to-markdown.ts";
import { hostileModel } from "../../../support/hostile-model.ts";
import { lostSign } from "../../../support/lost-sign.ts";

test("the Markdown of the flaps is what a reviewer reads", () => {
  const markdown = sheetToMarkdown(bramblehook, compile(bramblehook), { surfaces: ["flapLeft"] });
  const flaps = markdown.slice(markdown.indexOf("## flaps"), markdown.indexOf("## Findings"));
  expect(flaps).toContain("### Channel 5: flapLeft (F-L-07)");
  expect(flaps).toContain("| position | wanted | ENTER % | adds % | pulse µs | expect ° |");
  expect(flaps).toContain("| low limit | (down) | **−63** |  | 1185.0 |  |");
  expect(flaps).toMatch(
    /\| flap takeoff \| \+14\.0°, \+23\.6\u00a0mm \| \*\*\+40\*\* \| −3\d \| 1700\.0 \| \+13\.8 ±0\.\d \|/,
  );
  expect(markdown).not.toContain("aileronLeft");
});

test("where limits scale every value has its unit beside it", () => {
  const markdown = sheetToMarkdown(slatewing, compile(slatewing));
  expect(markdown).toContain("| position | wanted | ENTER | adds | pulse µs | expect ° |");
  expect(markdown).toMatch(/^\| low limit \| \(down\) \| \*\*−74\.0\*\* % \| {2}\|/m);
  expect(markdown).toMatch(/^\| at rest \| mode normal \| \*\*\+13\.0\*\* share \| {2}\|/m);
  expect(markdown).toMatch(/^\| pitch −1 \| .* \| \*\*\+74\.0\*\* share \| \+61\.0 share \|/m);
  expect(markdown).toMatch(/^\| failsafe \| {2}\| \*\*\+13\.0\*\* share \| {2}\|/m);
  expect(markdown).toContain("channel 1, at rest: +13.0 share");
  expect(markdown).toContain("A percent beside a pulse is of the signal scale.");
});

test("every table row has as many cells as its head, and no name is markup", () => {
  const markdown = sheetToMarkdown(hostileModel, compile(hostileModel));
  for (const line of markdown.split("\n"))
    if (line.startsWith("|")) expect(line.match(/(?<!\\)\|/g)).toHaveLength(7);
  expect(markdown).not.toMatch(/(?<!\\)<\/?(script|b|title|img)/);
  expect(markdown).not.toContain("\u202E");
});

test("with as-built readings the Markdown has what was read beside every value, and why it differs", () => {
  const plan = compile(bramblehook);
  const markdown = sheetToMarkdown(bramblehook, plan, { surfaces: ["flapLeft"], asBuilt: lostSign(plan) });
  expect(markdown).toContain("- **As built** NOT PASSED: of 75 lines");
  expect(markdown).toMatch(/^\| flap tow \|.*\| 1795\.0 agrees \| \+6\.0 agrees \|$/m);
  expect(markdown).toMatch(/^\| flap takeoff \|.*\| 1300\.0 DIFFERS by −400\.0 \| not measured \|$/m);
  expect(markdown).toContain(
    "- **Likely cause** In channel 5 (flapLeft), flap at takeoff has lost or gained a minus",
  );
});
