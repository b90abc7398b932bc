import { compile, deg, listDoubts, type Model, mm } from "@hingeline/core";
import { expect, test } from "vitest";
import { causeLines, wordsOf } from "../../../packages/dsl/src/render/doubt-causes.ts";
import { doubtToText } from "../../../packages/dsl/src/render/doubt-to-text.ts";
import { aileronRod, neverRead } from "../../support/never-read.ts";

const doubtsOf = (model: Model) => listDoubts(model, compile(model));

test("a dimension goes by what a builder calls it, in a chain with the number of its link", () => {
  expect(
    ["freePlay", "armAt", "links.0.armAt", "links.1.horn", "links.1.links.0.rod", "own"].map(wordsOf),
  ).toEqual(["free play", "arm angle", "arm angle 1", "horn 2", "rod 2.1", "own"]);
});

test("what is assumed of a linkage that was never read is said, and what to do about it", () => {
  const doubts = doubtsOf(neverRead());
  expect(causeLines(doubts, ["arm", "armAt", "rotation"], 80).join("\n")).toMatchInlineSnapshot(`
    "  arm         shaft to rod pin; assumed 0.5 mm: take readings, or write
                  instruments: { throw: mm(...) }
      arm angle   how the arm stands at level; assumed 1 deg: take readings
      rotation    what the servo's stated rotation is true to; assumed 2 % of it:
                  take readings"
  `);
  const ruled = doubtsOf(neverRead({ instruments: { throw: mm(0.3) } }));
  expect(causeLines(ruled, ["arm"], 80)).toEqual(["  arm         shaft to rod pin"]);
});

test("more causes than a line has room for stand in a second table, all of them", () => {
  const chain = { kind: "chain", links: [aileronRod, aileronRod] } as const;
  const { surfaces, ...model } = neverRead({
    moves: { lever: { stowed: { flap: deg(-8) }, takeoff: { flap: deg(0) }, landing: { flap: deg(8) } } },
  });
  const servo = surfaces.flap?.servo;
  const doubts = doubtsOf({
    ...model,
    surfaces: { flap: servo === undefined ? {} : { servo: { ...servo, linkage: chain } } },
  });
  const text = doubtToText("Chain", doubts);
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(text.match(/^ {2}Each alone, deg/gm)?.length).toBeGreaterThan(1);
  expect(text).toContain("  arm angle 2 how the arm stands at level; assumed 1 deg: take readings");
});
