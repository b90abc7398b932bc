import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { editModel } from "../../../packages/dsl/src/source/edit-model.ts";
import type { Json } from "../../../packages/dsl/src/source/json-data.ts";
import { readData } from "../../../packages/dsl/src/source/read-model.ts";
import { applyEdits } from "../../../packages/dsl/src/source/text-edit.ts";
import { arbitraryBench, arbitraryHand, arbitrarySession, writeModelFile } from "./arbitrary-model-file.ts";
import { brief, sourceOf } from "./fixture-source.ts";

const arbitraryCase = fc.array(arbitraryBench, { minLength: 1, maxLength: 3 }).chain((benches) =>
  fc.record({
    benches: fc.constant(benches),
    hand: arbitraryHand,
    at: fc.nat({ max: benches.length - 1 }),
    sessions: fc.tuple(...benches.map(arbitrarySession)),
  }),
);

describe("editModel on generated files", () => {
  test("writes what the builder would have written himself, to the byte", async () => {
    await fc.assert(
      fc.asyncProperty(arbitraryCase, async ({ benches, hand, at, sessions }) => {
        const wanted = benches.map((bench, index) => (index === at ? (sessions[index] ?? bench) : bench));
        const { names } = writeModelFile(wanted, hand, writeModelFile(benches, hand).names);
        const before = writeModelFile(benches, hand).text;
        const source = await sourceOf({ "model.ts": before });
        const edited = editModel(source, [{ address: `surfaces.s${at}.servo.bench`, value: wanted[at] }]);
        if ("refusals" in edited) throw new Error(`${brief(edited.refusals)}\n${before}`);
        const after = edited.files[0]?.text ?? before;
        expect(after).toBe(writeModelFile(wanted, hand, names).text);
        const read = readData(await sourceOf({ "model.ts": after }));
        expect("data" in read && (read.data as { surfaces: Json }).surfaces).toEqual(
          Object.fromEntries(
            wanted.map((bench, index) => [`s${index}`, { servo: { channel: index + 1, bench } }]),
          ),
        );
      }),
      { numRuns: 300 },
    );
  });

  test("that means what it meant changes no byte", async () => {
    await fc.assert(
      fc.asyncProperty(arbitraryCase, async ({ benches, hand }) => {
        const source = await sourceOf({ "model.ts": writeModelFile(benches, hand).text });
        const changes = benches.map((value, index) => ({ address: `surfaces.s${index}.servo.bench`, value }));
        expect(editModel(source, changes)).toEqual({ files: [] });
      }),
      { numRuns: 50 },
    );
  });
});

describe("applyEdits", () => {
  const cut = fc.record({
    gap: fc.nat({ max: 4 }),
    length: fc.nat({ max: 4 }),
    text: fc.string({ maxLength: 4 }),
  });

  test("keeps every character outside the edits, in whatever order they come", () => {
    fc.assert(
      fc.property(
        fc.array(cut, { maxLength: 6 }),
        fc.string({ maxLength: 5 }),
        fc.nat(),
        (cuts, tail, seed) => {
          // The text is built from what stays and what goes, so that both are known.
          let [before, after] = ["", ""];
          const edits = cuts.map(({ gap, length, text }) => {
            const stays = "s".repeat(gap + 1);
            const start = before.length + stays.length;
            before += stays + "g".repeat(length);
            after += stays + text;
            return { start, end: start + length, text };
          });
          const shuffled = edits.toSorted(
            (a, b) => ((a.start * 31 + seed) % 7) - ((b.start * 31 + seed) % 7),
          );
          expect(applyEdits(before + tail, shuffled)).toBe(after + tail);
        },
      ),
    );
  });

  test("refuses edits that overlap and two insertions at one place", () => {
    const edit = (start: number, end: number) => ({ start, end, text: "x" });
    expect(applyEdits("abcdef", [edit(1, 3), edit(2, 4)])).toBeUndefined();
    expect(applyEdits("abcdef", [edit(2, 2), edit(2, 2)])).toBeUndefined();
    expect(applyEdits("abcdef", [edit(1, 3), edit(3, 4)])).toBe("axxef");
  });
});
