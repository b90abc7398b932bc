import { compile, type Model } from "@hingeline/core";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import { describe, expect, test } from "vitest";

// Pulses worked out for these invented models apart from this project, by a curve through the same readings; all are met far inside the
// doubt of a position, 0.6 degrees.
const worked: readonly (readonly [
  model: Model,
  control: string,
  surface: string,
  position: string | number,
  pulseUs: number,
])[] = [
  [ostrevale, "camber", "flapLeft", "speed", 1911.0],
  [ostrevale, "camber", "flapLeft", "cruise", 1893.0],
  [ostrevale, "camber", "flapLeft", "thermal", 1847.1],
  [ostrevale, "brake", "flapLeft", 1, 1403.1],
  [ostrevale, "camber", "flapRight", "speed", 1102.3],
  [ostrevale, "camber", "flapRight", "cruise", 1120.0],
  [ostrevale, "camber", "flapRight", "thermal", 1164.0],
  [ostrevale, "brake", "flapRight", 1, 1603.4],
  [ostrevale, "brake", "aileronLeft", 1, 1709.2],
  [ostrevale, "brake", "aileronRight", 1, 1300.3],
  [ostrevale, "pitch", "panelLeft", -1, 1314.2],
  [ostrevale, "pitch", "panelLeft", 1, 1701.3],
  [ostrevale, "pitch", "panelRight", -1, 1298.9],
  [ostrevale, "pitch", "panelRight", 1, 1685.3],
  [slatewing, "mode", "elevonLeft", "normal", 1566.9],
  [slatewing, "mode", "elevonRight", "normal", 1441.8],
];

test.each(worked)("$0.name: $1 moves $2 at $3 to $4 us", (model, control, surface, position, pulseUs) => {
  const { yields: _, ...whole } = model;
  const setting = compile(whole)
    .channels.flatMap(({ settings }) => settings)
    .find(
      (one) => one.control === control && one.surface === surface && (one.detent ?? one.stick) === position,
    );
  expect(setting?.exact.pulseUs).toBeCloseTo(pulseUs, 1);
});

describe.each([
  [
    "sailplane",
    ostrevale,
    ["aileronLeft", "aileronRight", "flapLeft", "flapRight", "panelLeft", "panelRight"],
  ],
  ["delta", slatewing, ["elevonLeft", "elevonRight"]],
] as const)("the %s", (_, model, saturated) => {
  test("asks more than is there where nothing yields, and the plan says so", () => {
    const { yields: __, ...whole } = model;
    const code = whole.radio.endPoints === "clamp" ? "combination-cut" : "combination-passes";
    const found = compile(whole).findings.filter((finding) => finding.code === code);
    expect(new Set(found.map(({ at }) => at))).toEqual(new Set(saturated.map((name) => `surfaces.${name}`)));
  });

  test("asks no more than is there once its yields are declared", () => {
    const plan = compile(model);
    expect(plan.findings.filter(({ severity }) => severity !== "note")).toEqual([]);
    expect(plan.findings.filter(({ code }) => code === "gave-way").length).toBeGreaterThan(0);
  });
});

test("on the delta the elevator keeps its 14 degrees up, the aileron gets 6 on that side, as worked by hand", () => {
  const settings = compile(slatewing).channels.flatMap((channel) => channel.settings);
  const wanted = (control: string, stick: number, surface: string) =>
    settings.find((one) => one.control === control && one.stick === stick && one.surface === surface)?.wanted
      ?.deflectionDeg;
  // From a reflex of -2: -16 with full up elevator; with full roll -8 up.
  expect(wanted("pitch", -1, "elevonLeft")).toBe(-16);
  expect(wanted("roll", -1, "elevonLeft")).toBeCloseTo(-8, 9);
  expect(wanted("roll", 1, "elevonRight")).toBeCloseTo(-8, 9);
});
