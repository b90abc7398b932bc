import { compile, type Model } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import ostrevale from "@hingeline/examples/ostrevale";
import { describe, expect, test } from "vitest";
import { pictureNames, pictureToSvg } from "../../../../packages/dsl/src/render/sheet/picture-to-svg.ts";
import { spreadLabels } from "../../../../packages/dsl/src/render/sheet/plot-parts.ts";
import linked from "../../../support/linked-model.ts";

const pictures: readonly (readonly [string, Model, string])[] = [
  ["flaps-response", bramblehook, "flapLeft:response"],
  ["flaps-sides", bramblehook, "flaps:sides"],
  ["flaps-travel", bramblehook, "flaps:travel"],
  ["brakes-load", ostrevale, "flapLeft:load"],
  ["plane-linkage", linked, "flapLeft:linkage"],
  ["space-linkage", linked, "flapRight:linkage"],
  ["rudder-curve", linked, "rudder.upper:curve"],
];

describe("pictureToSvg", () => {
  test.each(pictures)("draws %s as it is committed", async (file, model, name) => {
    const svg = pictureToSvg(model, compile(model), name);
    await expect(svg).toMatchFileSnapshot(`../../../golden/pictures/${file}.svg`);
  });

  test.each(pictures)(
    "of %s stands alone, says what it shows and keeps inside its frame",
    (_, model, name) => {
      const svg = pictureToSvg(model, compile(model), name) ?? "";
      expect(svg).toMatch(
        /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 372 \d+(\.\d+)?" role="img"/,
      );
      expect(svg).toMatch(/<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]{10,}<\/desc>/);
      expect(svg).not.toMatch(/NaN|undefined|Infinity|style=|#(?!000|fff|[a-z]+-)/);
      const xs = [...svg.matchAll(/ (?:c?x)="(-?[\d.]+)"/g)].map(([, x]) => Number(x));
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...xs)).toBeLessThanOrEqual(372);
    },
  );

  test("knows every picture by a name of its own, and no other", () => {
    const names = pictureNames(linked, compile(linked));
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(pictureToSvg(linked, compile(linked), name)).toBeDefined();
    expect(pictureToSvg(linked, compile(linked), "flapLeft:poem")).toBeUndefined();
  });
});

test("labels that would touch are moved apart and stay in their order", () => {
  expect(spreadLabels([50, 50, 52, 90], 10, 100)).toEqual([50, 63, 76, 90]);
  expect(spreadLabels([99, 98], 10, 100)).toEqual([100, 87]);
  expect(spreadLabels([], 10, 100)).toEqual([]);
});
