import { compile, type Drawing, describeServos, us } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import linked from "../../support/linked-model.ts";

describe("describeServos", () => {
  const of = (id: string) => {
    const found = describeServos(linked).find((servo) => servo.id === id);
    if (found === undefined) throw new Error(id);
    return found;
  };

  test("names every servo of the plan, with its channel and what may be emitted", () => {
    const planned = compile(linked).channels.flatMap(({ channel, servos: ids, safeUs }) =>
      ids.map((id) => ({ id, channel, safeUs })),
    );
    const described = describeServos(linked).map(({ id, channel, safeUs }) => ({ id, channel, safeUs }));
    expect(described.toSorted((a, b) => a.channel - b.channel)).toEqual(planned);
  });

  test("has the response that the plan was made with", () => {
    for (const { settings, servos: ids } of compile(linked).channels)
      for (const { gives, enter } of settings) {
        if (gives === undefined) continue;
        const { measured } = of(ids[0] ?? "");
        expect(measured?.response.deflectionAt(us(enter.pulseUs))).toBe(gives.deflectionDeg);
        expect(measured?.uncertaintyAt(enter.pulseUs)).toBeCloseTo(gives.uncertaintyDeg ?? Number.NaN, 9);
      }
  });

  test("knows no deflection of a bench without readings", () => {
    expect(of("hatch").measured).toBeUndefined();
    expect(of("hatch").linkage).toBeUndefined();
  });

  test("gives stops by pulse with the reasons of the bench, whichever way the servo runs", () => {
    const [left, right] = describeServos(bramblehook).filter(({ surface }) => surface.startsWith("flap"));
    expect(left).toMatchObject({ rising: false, stopsUs: [1172, 1880], reasons: ["contact", "contact"] });
    expect(right).toMatchObject({ rising: true, stopsUs: [1132, 1838], guardUs: [10, 10] });
  });

  test("draws a linkage to its own lengths at every deflection that it reaches, and at no other", () => {
    const { linkage } = of("flapLeft");
    for (const deflectionDeg of [-1, 0, 15, 36]) {
      const points: Drawing["points"] = linkage?.standAt(deflectionDeg)?.drawing.points ?? {};
      const apart = (one: string, other: string) => {
        const [a, b] = [points[one], points[other]];
        return a === undefined || b === undefined
          ? Number.NaN
          : Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
      };
      // The lengths that the model declares: arm 11 mm, horn 13 mm.
      expect(apart("shaft", "armBall")).toBeCloseTo(11, 9);
      expect(apart("hinge", "hornBall")).toBeCloseTo(13, 9);
    }
    expect(linkage?.standAt(170)).toBeUndefined();
  });

  test("states the angles to dead centre: square at 90 degrees, smaller as arm and rod come into line", () => {
    const angles = [0, 15, 36].map(
      (deg) => of("flapLeft").linkage?.standAt(deg)?.rods[0]?.armDeg ?? Number.NaN,
    );
    expect(angles.every((angle) => angle > 0 && angle <= 90)).toBe(true);
    expect(angles).toEqual(angles.toSorted((a, b) => b - a));
  });
});
