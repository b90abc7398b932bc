import { describe, expect, test } from "vitest";
import { countFindings, findingsToText } from "../../../packages/dsl/src/render/findings-to-text.ts";
import { fullPlan, sampleFinding } from "../../support/sample-plan.ts";

describe("findingsToText", () => {
  test("counts, then lists by severity with address, sentence and what to do", () => {
    expect(findingsToText(fullPlan.findings)).toMatchInlineSnapshot(`
      "1 error, 1 warning, 1 note.

      ERROR  moves.flap.landing.flapLeft (limit-passed)
        flapLeft needs 1200 us, 8 us past the safe 1208 us (stop down 1204 us, guard
        4 us).
        -> Do not connect the linkage with this. 37.8 deg is the furthest that is
           safe.

      WARNING  the model (guard-thin)
        A guard is thin.
        -> Nothing to do.

      NOTE  surfaces.flap.servo (half-the-pulses)
        Half the pulses are not half the deflection.
        -> Nothing to do.
      "
    `);
  });

  test("gives a note that asks for nothing no remedy", () => {
    const text = findingsToText([sampleFinding({ severity: "note", do: "" })]);
    expect(text).not.toContain("->");
    expect(text).toMatch(/\.\n$/);
  });

  test("puts one line in place of the notes only where there is an error", () => {
    const insteadOfNotes = "--notes shows them";
    const folded = findingsToText(fullPlan.findings, { insteadOfNotes });
    expect(folded).toMatch(/^1 error, 1 warning, 1 note\.\n[\s\S]*\n\n1 note; --notes shows them\.\n$/);
    expect(folded).not.toContain("NOTE ");
    const sound = fullPlan.findings.filter(({ severity }) => severity !== "error");
    expect(findingsToText(sound, { insteadOfNotes })).toBe(findingsToText(sound));
  });

  test("of no findings is the counts alone", () => {
    expect(findingsToText([])).toBe("no errors, no warnings, no notes.\n");
  });

  test("shows what hides in a sentence or an address", () => {
    const text = findingsToText([sampleFinding({ at: 'surfaces["a\u202eb"]', message: "a\nb\u0007" })]);
    expect(text).toContain('surfaces["a\\u{202E}b"]');
    expect(text).toContain("  a\\u{000A}b\\u{0007}\n");
  });
});

test("countFindings uses the plural for all but one", () => {
  const of = (severity: "error" | "warning" | "note", count: number) =>
    Array.from({ length: count }, () => sampleFinding({ severity }));
  expect(countFindings([...of("error", 1), ...of("warning", 2)])).toBe("1 error, 2 warnings, no notes");
  expect(countFindings([...of("warning", 1), ...of("note", 1)])).toBe("no errors, 1 warning, 1 note");
});
