import {
  atThrow,
  type DeclaredModel,
  deg,
  matched,
  mm,
  model,
  mps,
  pct,
  per,
  pushrod,
  s,
  selector,
  stick,
  together,
  us,
} from "@hingeline/dsl";
import { describe, expect, test } from "vitest";

// tsc runs over this file: a mistake that compiles leaves its directive unused, which is an error.

const radio = {
  name: "field set",
  centre: us(1500),
  per100: us(512),
  reach: pct(125),
  step: pct(0.1),
  endPoints: "clamp",
  curvePoints: 5,
} as const;
const servo = (channel: number) => ({ channel, bench: { level: us(1500), down: us(1900) } });
const rod = { arm: mm(11), horn: mm(13), base: mm(48), rise: mm(-2), armAt: deg(95), hornAt: deg(100) };
const surfaces = {
  flapLeft: { servo: servo(1) },
  flapRight: { servo: servo(2) },
  elevator: { servo: servo(3) },
};
const controls = {
  flap: selector("stowed", "landing"),
  phase: selector("cruise", "thermal"),
  roll: stick(),
};
const groups = { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) };
const parts = { radio, surfaces, controls, groups };
const moves = {
  flap: { stowed: { flaps: deg(0) }, landing: { flaps: deg(38), elevator: deg(-2) } },
  roll: { flaps: [deg(-3), deg(3)] },
} as const;

describe("a misspelt surface or group does not compile", () => {
  test("in a selector's moves", () => {
    const made = model("m", {
      ...parts,
      moves: {
        flap: {
          stowed: {},
          // @ts-expect-error
          landing: { elevater: deg(1) },
        },
      },
    });
    expect(made.moves).toHaveProperty("flap.landing.elevater");
  });

  test("in a stick's moves", () => {
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        roll: { flaps: [deg(-3), deg(3)], flasp: [deg(-3), deg(3)] },
      },
    });
    expect(made.moves).toHaveProperty("roll.flasp");
  });

  test("in a stick's moves per detent, beside a right one", () => {
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        roll: per("phase", { cruise: { flaps: [deg(-3), deg(3)] }, thermal: { flasp: [deg(-3), deg(3)] } }),
      },
    });
    expect(made.moves).toHaveProperty("roll.cases.thermal.flasp");
  });

  test("in a selector's moves per detent", () => {
    const cruise = { stowed: { flaps: deg(0) }, landing: { flaps: deg(30) } };
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        flap: per("phase", { cruise, thermal: { stowed: {}, landing: { flap: deg(3) } } }),
      },
    });
    expect(made.moves).toHaveProperty("flap.cases.thermal.landing.flap");
  });

  test("in a group", () => {
    const made = model("m", {
      ...parts,
      groups: {
        flaps: together(["flapLeft", "flapRight"]),
        // @ts-expect-error
        all: together(["flapLeft", "flapRigth"]),
      },
      moves,
    });
    expect(made.groups).toHaveProperty("all");
  });

  test("in yields", () => {
    const made = model("m", {
      ...parts,
      moves,
      // @ts-expect-error
      yields: { flapLfet: ["roll"] },
    });
    expect(made.yields).toHaveProperty("flapLfet");
  });
});

describe("a misspelt control does not compile", () => {
  test("in moves, transit, airspeed, failsafe, yields and per", () => {
    const made = model("m", {
      ...parts,
      moves: {
        ...moves,
        // @ts-expect-error
        roll: per("phaze", { cruise: {}, thermal: { flaps: [deg(-3), deg(3)] } }),
      },
      transit: {
        flap: s(2),
        // @ts-expect-error
        flpa: s(2),
      },
      airspeed: {
        otherwise: mps(30),
        // @ts-expect-error
        flpa: mps(17),
      },
      failsafe: {
        // @ts-expect-error
        flpa: "stowed",
      },
      yields: {
        // @ts-expect-error
        flapLeft: ["rolls"],
      },
    });
    expect(made.transit).toHaveProperty("flpa");
    const other = model("m", {
      ...parts,
      moves: {
        flap: { stowed: {}, landing: {} },
        // @ts-expect-error
        rol: { flaps: [deg(-3), deg(3)] },
      },
    });
    expect(other.moves).toHaveProperty("rol");
  });
});

describe("a misspelt or missing detent does not compile", () => {
  test("in moves", () => {
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        flap: { stowed: {} },
        // @ts-expect-error
        phase: { cruise: {}, thermal: {}, speed: {} },
      },
    });
    expect(made.moves).toHaveProperty("flap");
  });

  test("in per, whose cases name every detent of the selector and no other", () => {
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        roll: per("phase", { thermal: { flaps: [deg(-3), deg(3)] } }),
        // @ts-expect-error
        flap: per("phase", { cruise: { stowed: {}, landing: {} }, thermal: { stowed: {} } }),
      },
    });
    expect(made.moves).toHaveProperty("roll");
    const other = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        roll: per("phase", { cruise: {}, thermal: {}, speed: { flaps: [deg(-3), deg(3)] } }),
      },
    });
    expect(other.moves).toHaveProperty("roll");
  });

  test("in airspeed and failsafe", () => {
    const made = model("m", {
      ...parts,
      moves,
      airspeed: {
        otherwise: mps(30),
        flap: {
          // @ts-expect-error
          landign: mps(17),
        },
      },
      failsafe: {
        // @ts-expect-error
        flap: "landign",
        roll: 0,
      },
    });
    expect(made.failsafe).toEqual({ flap: "landign", roll: 0 });
  });
});

describe("a wrong unit does not compile", () => {
  test("anywhere in a model", () => {
    const made = model("m", {
      radio: {
        ...radio,
        // @ts-expect-error
        centre: pct(0),
      },
      instruments: {
        // @ts-expect-error
        deflection: us(1),
      },
      surfaces: {
        flapLeft: {
          // @ts-expect-error
          chord: deg(62),
          servo: {
            channel: 1,
            bench: {
              level: us(1500),
              // @ts-expect-error
              down: 1900,
              readings: [
                [us(1500), deg(0)],
                // @ts-expect-error
                [deg(3), us(1600)],
                // @ts-expect-error
                [us(1600), mm(3)],
              ],
            },
            linkage: pushrod({
              ...rod,
              // @ts-expect-error
              arm: deg(11),
            }),
          },
        },
      },
      controls: {
        ...controls,
        pitch: stick({
          // @ts-expect-error
          trim: deg(10),
        }),
      },
      moves: {
        flap: {
          // @ts-expect-error
          stowed: { flapLeft: mm(0) },
          // @ts-expect-error
          landing: { flapLeft: us(1900) },
        },
        roll: {
          // @ts-expect-error
          flapLeft: [deg(0), 3],
        },
      },
      transit: {
        // @ts-expect-error
        flap: mps(2),
      },
      airspeed: {
        // @ts-expect-error
        otherwise: s(3),
      },
    });
    expect(made.name).toBe("m");
    // @ts-expect-error
    expect(atThrow(deg(3))).toEqual({ kind: "throw", mm: 3 });
    // @ts-expect-error
    expect(matched(["a"], { within: mm(1) })).toHaveProperty("within", 1);
  });
});

describe("what is not of one shape does not compile", () => {
  test("a surface with both `servo` and `servos`, or neither", () => {
    const made = model("m", {
      ...parts,
      surfaces: {
        // @ts-expect-error
        flapLeft: { servo: servo(1), servos: { upper: servo(2) } },
        // @ts-expect-error
        flapRight: { chord: mm(62) },
        elevator: { servos: { upper: servo(3), lower: servo(4) } },
      },
      moves,
    });
    expect(made.surfaces.elevator).toHaveProperty("servos");
  });

  test("a selector's moves for a stick, a stick's for a selector, and transit of a stick", () => {
    const made = model("m", {
      ...parts,
      moves: {
        // @ts-expect-error
        flap: { flaps: [deg(0), deg(1)] },
        // @ts-expect-error
        roll: { stowed: { flaps: deg(0) } },
      },
      transit: {
        // @ts-expect-error
        roll: s(1),
      },
    });
    expect(made.moves).toHaveProperty("flap");
  });

  test("a key that no model has", () => {
    const made = model("m", {
      ...parts,
      moves,
      // @ts-expect-error
      tranist: { flap: s(2) },
    });
    expect(made).toHaveProperty("tranist");
  });

  test("a change to a declared model", () => {
    const made = model("m", { ...parts, moves });
    expect(() => {
      // @ts-expect-error
      made.name = "n";
    }).toThrow(TypeError);
  });
});

describe("what is right compiles", () => {
  test("and keeps the names as literal types", () => {
    const made = model("m", {
      ...parts,
      moves: {
        flap: per("phase", {
          cruise: { stowed: {}, landing: { flaps: deg(30) } },
          thermal: { stowed: { elevator: deg(1) }, landing: { flaps: deg(38) } },
        }),
        roll: per("phase", { cruise: {}, thermal: {} }),
      },
      yields: { flapLeft: ["roll", "flap"], "elevator.upper": ["roll"] },
    });
    const typed: DeclaredModel<"field set", "flapLeft" | "flapRight" | "elevator", "flaps", typeof controls> =
      made;
    const surface: "flapLeft" | "flapRight" | "elevator" = {} as keyof typeof made.surfaces;
    // @ts-expect-error
    const wrong: "flapLeft" = {} as keyof typeof made.surfaces;
    expect([typed, surface, wrong]).toHaveLength(3);
  });
});
