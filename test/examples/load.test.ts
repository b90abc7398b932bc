import { compile, type Model, mps } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import { describe, expect, test } from "vitest";

const models: readonly (readonly [string, Model])[] = [
  ["tow plane", bramblehook],
  ["sailplane", ostrevale],
  ["delta", slatewing],
];

describe.each(models)("the %s", (_, model) => {
  test("states its doubt for every setting, and the load of every surface whose size it knows", () => {
    for (const { settings } of compile(model).channels)
      for (const { gives, load, surface } of settings) {
        expect(gives?.uncertaintyDeg).toBeGreaterThan(0.2);
        expect(gives?.uncertaintyDeg).toBeLessThan(1.2);
        if (model.surfaces[surface]?.span !== undefined) expect(load?.share).toBeGreaterThanOrEqual(0);
      }
  });

  test("loads no servo beyond half of its torque at the speeds it is meant for", () => {
    for (const { load } of compile(model).channels) expect(load?.share ?? 0).toBeLessThan(0.5);
  });
});

test("full flap of the tow plane at 20 m/s: about 0.72 N m at the hinge, about 27 % of the servo, as worked by hand", () => {
  // q = 245 Pa, S = 0.620 * 0.096 m2, c = 0.096 m, b2 = 0.012 per degree, 42 degrees; worked with a chord of 97 mm and a ratio of
  // 0.52, which the readings put at 0.49.
  const landing = settingsOf(bramblehook).find(
    ({ surface, detent }) => surface === "flapLeft" && detent === "landing",
  );
  expect(landing?.load?.momentNm).toBeCloseTo(0.72, 1);
  expect(landing?.load?.share).toBeCloseTo(0.27, 1);
  // Half of the torque: 27 m/s worked by hand.
  expect(landing?.load?.limitMps).toBeGreaterThan(26);
  expect(landing?.load?.limitMps).toBeLessThan(29);
});

test("full flap of the tow plane at its dive speed of 36 m/s is refused, with the speed that it may be used at", () => {
  const refused = errorsOf({ ...bramblehook, airspeed: { otherwise: mps(36) } });
  expect(refused.map(({ code, at }) => [code, at])).toEqual([
    ["not-held", "moves.flap.landing.flapLeft"],
    ["not-held", "moves.flap.landing.flapRight"],
  ]);
  expect(refused[0]?.numbers.limitMps).toBeCloseTo(27, 0);
  expect(refused[0]?.do).toContain("27");
});

test("the sailplane's brake at 35 m/s is refused likewise: 1.5 N m of 0.9, as worked by hand", () => {
  const refused = errorsOf({ ...ostrevale, yields: {}, airspeed: { otherwise: mps(35) } }).filter(
    ({ at }) => at === "moves.brake.flapLeft",
  );
  expect(refused.map(({ code }) => code)).toEqual(["not-held"]);
  // Worked by hand with b2 = 0.012 and a ratio of 1.40: 1.47 N m; 163 %.
  expect(refused[0]?.numbers.sharePercent).toBeGreaterThan(140);
  expect(refused[0]?.numbers.sharePercent).toBeLessThan(190);
});

test("the load grows with the square of the airspeed", () => {
  const shareAt = (speed: number) =>
    settingsOf({ ...bramblehook, airspeed: { otherwise: mps(speed) } }).find(
      ({ surface, detent }) => surface === "flapLeft" && detent === "landing",
    )?.load?.share ?? Number.NaN;
  expect(shareAt(20) / shareAt(10)).toBeCloseTo(4, 9);
});

function settingsOf(model: Model) {
  return compile(model).channels.flatMap(({ settings }) => settings);
}

function errorsOf(model: Model) {
  return compile(model).findings.filter(({ severity }) => severity === "error");
}
