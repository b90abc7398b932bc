import { compile, deg, mm } from "@hingeline/core";
import corvane from "@hingeline/examples/corvane";
import { describe, expect, test } from "vitest";

const plan = compile(corvane);
const settings = plan.channels.flatMap((channel) => channel.settings);

// Pulses worked out for this invented model apart from this project, by a curve through the same readings; here the shape comes from
// the linkage, fitted to them. 4 us are 0.16 mm of carriage, far inside the doubt of a reading with a rule, 0.5 mm.
describe.each([
  ["flapLeft", [1143.7, 1408.4, 1538.9, 1820.4]],
  ["flapRight", [1862.4, 1589.4, 1462.0, 1176.9]],
] as const)("%s of the twin", (surface, pulses) => {
  test("stands at 0.5, 12, 18 and 31.5 mm of carriage where worked by hand, to half a millimetre", () => {
    const flap = settings.filter((one) => one.surface === surface && one.control === "flap");
    expect(flap.map(({ detent }) => detent)).toEqual(["retracted", "takeoff", "approach", "landing"]);
    expect(flap.map(({ wanted }) => Number(wanted?.extensionMm?.toFixed(6)))).toEqual([0.5, 12, 18, 31.5]);
    flap.forEach(({ exact }, index) => {
      // The carriage goes 33.6 mm in 740 us: half a millimetre is 11 us.
      expect(Math.abs(exact.pulseUs - (pulses[index] ?? 0))).toBeLessThan(11);
    });
  });
});

test("the twin's rudder states the pulses of both servos that belong together, as worked by hand", () => {
  const [gang] = plan.gangs;
  expect(gang?.servos).toEqual(["rudder.lower", "rudder.upper"]);
  // Worked by hand at -20, -10, 0, 10, 20 degrees; between the nine points of the plan the pulses are nearly straight.
  const upper = [1236.0, 1369.1, 1502.6, 1649.7, 1805.5];
  const lower = [1171.1, 1328.8, 1479.5, 1622.4, 1762.6];
  [-20, -10, 0, 10, 20].forEach((deflection, index) => {
    const [lowerUs, upperUs] = between(gang?.points ?? [], deflection);
    expect(Math.abs((lowerUs ?? 0) - (lower[index] ?? 0))).toBeLessThan(4);
    expect(Math.abs((upperUs ?? 0) - (upper[index] ?? 0))).toBeLessThan(4);
  });
});

test("the two rudder servos, given the same ends, are found to pull the rudder apart in between", () => {
  expect(gangWorst()).toBeGreaterThan(0);
  const { servos } = corvane.surfaces.rudder;
  const equal = {
    ...corvane,
    surfaces: {
      ...corvane.surfaces,
      rudder: { servos: { ...servos, lower: { ...servos?.upper, channel: 8 } } },
    },
  };
  expect(compile(equal as typeof corvane).gangs[0]?.worstDeg).toBeLessThan(0.2);
});

test("a wrong hole is found and named: the flap's first arm declared 15 mm, 17 mm by the readings", () => {
  const { flapLeft } = corvane.surfaces;
  const linkage = flapLeft.servo?.linkage;
  if (linkage?.kind !== "chain") throw new Error("the twin's flap hangs on a chain");
  const links = linkage.links.map((link, index) =>
    index === 0 && link.kind === "pushrod" ? { ...link, arm: mm(15), rod: mm(119.6) } : link,
  );
  const wrong = {
    ...corvane,
    surfaces: {
      ...corvane.surfaces,
      flapLeft: { ...flapLeft, servo: { ...flapLeft.servo, linkage: { ...linkage, links } } },
    },
  };
  const found = compile(wrong as typeof corvane).findings.find(
    ({ code }) => code === "linkage-misfit" || code === "reading-out-of-reach",
  );
  expect(found?.at).toBe("surfaces.flapLeft.servo.linkage");
  expect(found?.message).toContain("links.0.arm");
});

test("half the pulses of the flap is far from half the deflection", () => {
  const half = plan.findings.find(({ code, at }) => code === "half-the-pulses" && at.includes("flapLeft"));
  expect((half?.numbers.wantedDeg ?? 0) - (half?.numbers.halfDeg ?? 0)).toBeGreaterThan(2);
});

test("the twin has no error", () => {
  expect(plan.findings.filter(({ severity }) => severity === "error")).toEqual([]);
});

function gangWorst(): number {
  return plan.gangs[0]?.worstDeg ?? 0;
}

function between(
  points: readonly { readonly deflectionDeg: number; readonly pulsesUs: readonly number[] }[],
  deflection: number,
): number[] {
  const index = points.findIndex((point) => point.deflectionDeg >= deflection);
  const [low, high] = [points[index - 1], points[index]];
  if (low === undefined || high === undefined) return [];
  const share = (deg(deflection) - low.deflectionDeg) / (high.deflectionDeg - low.deflectionDeg);
  return low.pulsesUs.map((pulseUs, at) => pulseUs * (1 - share) + (high.pulsesUs[at] ?? 0) * share);
}

test("the twin states the load of every setting of flaps and rudder, the flaps' through their bell-cranks and tracks", () => {
  const loaded = settings.filter(({ surface }) => surface !== "nosewheel");
  for (const { load } of loaded) expect(load?.share).toBeGreaterThanOrEqual(0);
  for (const { load, surface } of loaded)
    if (surface.startsWith("flap")) expect(load?.rodN).toBeGreaterThanOrEqual(0);
});

test("flaps that are asked for the same extension are matched, though their degrees differ by a hair", () => {
  const wanted = settings.filter(({ detent, surface }) => detent === "landing" && surface.startsWith("flap"));
  const [left, right] = wanted.map((setting) => setting.wanted?.deflectionDeg ?? Number.NaN);
  expect(Math.abs((left ?? 0) - (right ?? 0))).toBeLessThan(0.02);
  expect(plan.matches).toMatchObject([{ group: "flaps", surfaces: ["flapLeft", "flapRight"], withinDeg: 1 }]);
});
