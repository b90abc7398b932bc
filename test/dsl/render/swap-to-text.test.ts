import { deg, type Reading, swapServo, us } from "@hingeline/core";
import { expect, test } from "vitest";
import { swapToText } from "../../../packages/dsl/src/render/swap-to-text.ts";
import { neverRead } from "../../support/never-read.ts";

const at = (pulse: number, deflection: number): Reading => [us(pulse), deg(deflection)];
const four = [at(1250, -16.8), at(1400, -6.2), at(1488, 0), at(1700, 14.6)];

function textOf(read: readonly Reading[]): string {
  const swap = swapServo(neverRead(), "flap", read);
  if (swap.kind !== "mapped") throw new Error(`no map: ${swap.kind}`);
  return swapToText(swap, read);
}

test("of a linkage that was never read the rotation is to be pasted too, and no empty list of readings", () => {
  const text = textOf(four.slice(0, 3));
  expect(text).toMatch(
    /^type: \{ rotation: degPerUs\(0\.0\d{3,4}\) \}, \/\/ was 0\.094; the rest from its sheet$/m,
  );
  expect(text).not.toContain("readings: [");
  expect(text).toContain("Put this in place of the rotation and the bench of flap");
});

test("new readings that are enough for a fit are offered beside it, at most 80 columns wide", () => {
  const text = textOf(four);
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(text.slice(text.indexOf("type:"))).toMatchInlineSnapshot(`
    "type: { rotation: degPerUs(0.09282) }, // was 0.094; the rest from its sheet
    bench: {
      up: us(...), // measure
      level: us(1490.2),
      down: us(...), // measure
    },

    Until now no reading told how this surface moves. Put the new ones into the
    bench as well: the linkage is then fitted to them, and nothing past the
    outermost two is used.

    readings: [
      [us(1250.0), deg(-16.8)],
      [us(1400.0), deg(-6.2)],
      [us(1488.0), deg(0)],
      [us(1700.0), deg(14.6)],
    ],

    MEASURE AGAIN on the bench
    [ ] the stops up and down of the new servo, from inside: a map never gives a
        stop, and the old ones are not safe
    "
  `);
});
