import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Model } from "../../../packages/core/src/model/model.ts";
import type { ModelProblem } from "../../../packages/core/src/model/model-problem.ts";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { arbitraryMutation } from "../../support/arbitrary-mutation.ts";
import { smallModel } from "./small-model.ts";

/** What is wrong with the small model once `change` has been made to it. */
function problemsAfter(change: (model: ReturnType<typeof smallModel>) => void): readonly ModelProblem[] {
  const model = smallModel();
  change(model);
  const parsed = parseModel(model);
  return "problems" in parsed ? parsed.problems : [];
}

describe("parseModel, for every input", () => {
  test("gives back a valid model as it is, after JSON too", () => {
    fc.assert(
      fc.property(arbitraryModel, (model) => {
        expect(parseModel(model)).toEqual({ model });
        expect(parseModel(JSON.parse(JSON.stringify(model)))).toEqual({ model });
      }),
    );
  });

  test("gives problems, and throws for nothing", () => {
    const anything = fc.anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withNullPrototype: true,
      withSparseArray: true,
    });
    fc.assert(
      fc.property(fc.oneof(anything, fc.jsonValue()), (data) => {
        const parsed = parseModel(data);
        expect("problems" in parsed && parsed.problems.length > 0).toBe(true);
      }),
    );
  });

  test("gives a model or sentences with plain addresses for a valid model with one part replaced or taken out", () => {
    fc.assert(
      fc.property(arbitraryModel.chain(arbitraryMutation), (data) => {
        const parsed = parseModel(data);
        if ("model" in parsed) {
          // -0 is the one number that JSON has no word for.
          expect(parsed.model).toEqual(JSON.parse(JSON.stringify(data)));
          return;
        }
        expect(parsed.problems.length).toBeGreaterThan(0);
        expect(JSON.parse(JSON.stringify(parsed.problems))).toEqual(parsed.problems);
        for (const problem of parsed.problems) {
          expect(problem.expected).not.toMatch(/invalid|^$/i);
          expect(problem.received).not.toBe("");
        }
      }),
    );
  });

  test("makes a copy: a later change to the input does not reach the model", () => {
    const data = smallModel();
    const parsed = parseModel(data);
    data.radio.centre = 1000;
    expect("model" in parsed && parsed.model.radio.centre).toBe(1500);
  });
});

test("a key that holds undefined is left out, as where a spread writes one", () => {
  expect(parseModel({ ...smallModel(), airspeed: undefined })).toEqual(parseModel(smallModel()));
});

describe("parseModel refuses what is no plain data", () => {
  const hostile: readonly [string, () => unknown, string][] = [
    ["a function", () => () => 1, "a function"],
    ["a symbol", () => Symbol("x"), "a symbol"],
    ["a bigint", () => 5n, "a bigint"],
    ["undefined in a list", () => [undefined], "nothing"],
    ["NaN", () => Number.NaN, "NaN"],
    ["an infinity", () => Number.NEGATIVE_INFINITY, "-Infinity"],
    ["a date", () => new Date(0), "an object with a class"],
    ["a map", () => new Map(), "an object with a class"],
    ["a boxed number", () => Object(1500), "an object with a class"],
    ["a symbol key", () => ({ [Symbol("x")]: 1 }), "an object with symbol keys"],
    ["a hole in a list", () => new Array(1), "nothing"],
    [
      "a proxy that throws",
      () =>
        new Proxy(
          {},
          {
            ownKeys: () => {
              throw new Error("no");
            },
          },
        ),
      "an object that cannot be read",
    ],
    [
      "a revoked proxy",
      () => {
        const { proxy, revoke } = Proxy.revocable({}, {});
        revoke();
        return proxy;
      },
      "an object that cannot be read",
    ],
  ];
  test.each(hostile)("%s, by its address", (_, make, received) => {
    const problems = problemsAfter((model) =>
      Object.assign(model.surfaces.flap.servo.bench, { guard: make() }),
    );
    expect(problems[0]).toMatchObject({ kind: "notPlain", received });
    expect(problems[0]?.address.slice(0, 5)).toEqual(["surfaces", "flap", "servo", "bench", "guard"]);
  });

  test("a getter, without calling it", () => {
    let calls = 0;
    const problems = problemsAfter((model) =>
      Object.defineProperty(model.surfaces.flap, "chord", { enumerable: true, get: () => (calls += 1) }),
    );
    expect(problems).toEqual([
      {
        kind: "notPlain",
        address: ["surfaces", "flap", "chord"],
        expected: "JSON data",
        received: "a getter or setter",
      },
    ]);
    expect(calls).toBe(0);
  });

  test("a cycle", () => {
    const problems = problemsAfter((model) => Object.assign(model.surfaces.flap, { again: model }));
    expect(problems).toEqual([
      {
        kind: "notPlain",
        address: ["surfaces", "flap", "again"],
        expected: "JSON data",
        received: "an object that holds itself",
      },
    ]);
  });

  test("nesting without end, by depth and by number of values", () => {
    let deep: unknown = 1;
    for (let level = 0; level < 100_000; level += 1) deep = [deep];
    expect(problemsAfter((model) => Object.assign(model, { deep }))[0]?.received).toBe("more than 32 levels");
    let wide: unknown = 1;
    for (let level = 0; level < 20; level += 1) wide = [wide, wide, wide, wide];
    expect(problemsAfter((model) => Object.assign(model, { wide }))[0]?.received).toBe(
      "more than 50000 values",
    );
    expect(problemsAfter((model) => Object.assign(model, { wide: new Array(4e9) }))).toHaveLength(100);
  });

  test("as many faults as it takes values, without running out of stack", () => {
    const wrong = Object.fromEntries(Array.from({ length: 24_000 }, (_, index) => [`detent${index}`, "x"]));
    const problems = problemsAfter((model) => Object.assign(model, { moves: { gear: wrong, phase: wrong } }));
    expect(problems).toHaveLength(48_000);
  });

  test("the key __proto__, which JSON can hold", () => {
    const problems = parseModel(JSON.parse('{"surfaces": {"__proto__": {"servo": 1}}}'));
    expect(problems).toMatchObject({ problems: [{ kind: "notPlain", address: ["surfaces", "__proto__"] }] });
  });

  test("but takes a shared object twice, an object without prototype, and -0 as 0", () => {
    const model = smallModel();
    const bench = Object.assign(Object.create(null), model.surfaces.flap.servo.bench, {
      readings: [
        [1500, -0],
        [1900, 30],
      ],
    });
    const data = {
      ...model,
      surfaces: { flap: { servo: { channel: 1, bench } }, other: { servo: { channel: 2, bench } } },
    };
    const parsed = parseModel(data);
    expect("model" in parsed && parsed.model.surfaces.other?.servo?.bench.readings?.[0]).toEqual([1500, 0]);
  });
});

describe("parseModel names what is wrong", () => {
  const bench = ["surfaces", "flap", "servo", "bench"] as const;

  test("a missing key, with what should be there", () => {
    const problems = problemsAfter((model) =>
      Reflect.deleteProperty(model.surfaces.flap.servo.bench, "level"),
    );
    expect(problems).toEqual([
      {
        kind: "missing",
        address: [...bench, "level"],
        expected: "pulse, 100 to 5000 microseconds",
        received: "nothing",
      },
    ]);
  });

  test("a chord in metres and an arm in metres (mistake of units), with the plausible range", () => {
    const problems = problemsAfter((model) => {
      Object.assign(model.surfaces.flap, { chord: 0.097 });
      model.surfaces.flap.servo.linkage.arm = 0.011;
    });
    expect(problems).toEqual([
      {
        kind: "outOfRange",
        address: ["surfaces", "flap", "chord"],
        expected: "chord, 1 to 2000 millimetres",
        received: "0.097",
        value: 0.097,
        limit: 1,
        limitAllowed: true,
      },
      {
        kind: "outOfRange",
        address: ["surfaces", "flap", "servo", "linkage", "arm"],
        expected: "shaft to rod pin, 1 to 300 millimetres",
        received: "0.011",
        value: 0.011,
        limit: 1,
        limitAllowed: true,
      },
    ]);
  });

  test("a misspelt key, with the key most likely meant that is not there yet", () => {
    const [problem] = problemsAfter((model) => Object.assign(model.surfaces.flap, { chrod: 62 }));
    expect(problem).toMatchObject({
      kind: "unknownKey",
      address: ["surfaces", "flap", "chrod"],
      nearest: "chord",
    });
    const [taken] = problemsAfter((model) => Object.assign(model.surfaces.flap, { servs: 62 }));
    expect(taken).toMatchObject({ nearest: "servos" });
    const [strange] = problemsAfter((model) => Object.assign(model, { paint: "red" }));
    expect(strange).not.toHaveProperty("nearest");
  });

  test("a step of 0, a reach above 200, a channel that is not whole", () => {
    const problems = problemsAfter((model) => {
      model.radio.step = 0;
      model.radio.reach = 201;
      model.surfaces.flap.servo.channel = 1.5;
    });
    expect(problems).toMatchObject([
      { address: ["radio", "reach"], kind: "outOfRange", limit: 200 },
      { address: ["radio", "step"], kind: "outOfRange", limit: 0, limitAllowed: false },
      {
        address: ["surfaces", "flap", "servo", "channel"],
        kind: "wrongType",
        expected: "receiver output, a whole number from 1 to 32",
      },
    ]);
  });

  test.each(["", "a.b", "a\u0000", "x".repeat(201), "constructor", "\ud800"])(
    "a surface named %j",
    (name) => {
      const [problem] = problemsAfter((model) =>
        Object.assign(model.surfaces, { [name]: model.surfaces.flap }),
      );
      expect(problem).toMatchObject({ kind: "badName", address: ["surfaces", name] });
    },
  );

  test("names of 200 characters and of any script are names", () => {
    for (const name of ["x".repeat(200), "Klappe links", "羽", "🛩".repeat(200)]) {
      expect(
        problemsAfter((model) => Object.assign(model.surfaces, { [name]: model.surfaces.flap })),
      ).toEqual([]);
    }
  });

  test("a control cannot be named otherwise, which has its own meaning under airspeed", () => {
    const [problem] = problemsAfter((model) =>
      Object.assign(model.controls, { otherwise: { kind: "stick" } }),
    );
    expect(problem).toMatchObject({ kind: "badName", address: ["controls", "otherwise"] });
  });

  test("a surface with both servo and servos, or neither", () => {
    const both = problemsAfter((model) =>
      Object.assign(model.surfaces.flap, { servos: { upper: model.surfaces.flap.servo } }),
    );
    const neither = problemsAfter((model) => Object.assign(model.surfaces, { rudder: { chord: 60 } }));
    expect(both).toMatchObject([
      { kind: "wrongShape", address: ["surfaces", "flap"], expected: 'either "servo" or "servos"' },
    ]);
    expect(neither).toMatchObject([{ kind: "wrongShape", address: ["surfaces", "rudder"] }]);
  });

  test("the alternative that was meant, at its exact field", () => {
    const at = (change: (model: ReturnType<typeof smallModel>) => void) =>
      problemsAfter(change).map((problem) => [problem.address.join("."), problem.kind]);
    const moves = (value: unknown) => at((model) => Object.assign(model.moves, { gear: value }));
    expect(moves({ up: { flap: { kind: "part", part: 2 } } })).toEqual([
      ["moves.gear.up.flap.part", "outOfRange"],
    ]);
    expect(moves({ up: { flap: { kind: "prat", part: 1 } } })).toEqual([
      ["moves.gear.up.flap.kind", "notOneOf"],
    ]);
    expect(moves({ flap: [0, "x"] })).toEqual([["moves.gear.flap.1", "wrongType"]]);
    expect(moves({ flap: [0] })).toEqual([["moves.gear.flap", "wrongLength"]]);
    // The key that was meant is not missing besides.
    expect(moves({ per: "phase", casse: {} })).toEqual([["moves.gear.casse", "unknownKey"]]);
    expect(moves({ per: "phase", cases: { up: { flap: [0, null] } } })).toEqual([
      ["moves.gear.cases.up.flap.1", "wrongType"],
    ]);
    expect(moves({ up: 3 })).toEqual([["moves.gear.up", "wrongType"]]);
    expect(moves({ up: 3, down: 4, out: 5 })).toEqual([
      ["moves.gear.up", "wrongType"],
      ["moves.gear.down", "wrongType"],
      ["moves.gear.out", "wrongType"],
    ]);
    expect(moves("up")).toEqual([["moves.gear", "wrongType"]]);
    expect(moves({ up: { flap: { per: "phase" } } })).toEqual([["moves.gear.up.flap.kind", "missing"]]);
    const stop = { kind: "stop", pulse: 1900, reason: "contct" };
    const [problem] = problemsAfter((model) =>
      Object.assign(model.surfaces.flap.servo.bench, { down: stop }),
    );
    expect(problem).toMatchObject({
      kind: "notOneOf",
      address: [...bench, "down", "reason"],
      nearest: "contact",
    });
  });

  test("a detent called per is still a detent", () => {
    expect(
      problemsAfter((model) =>
        Object.assign(model.moves, { gear: { per: { flap: 0 }, cases: { flap: 1 } } }),
      ),
    ).toEqual([]);
  });
});

test("every linkage kind, each inside a chain, parses to itself", () => {
  const mm3 = [0, 1, 0];
  const axis = { through: mm3, along: mm3 };
  const kinds = [
    { kind: "pushrod", arm: 11, horn: 13, base: 48, rise: -2, armAt: 95, hornAt: 100, rod: 50 },
    { kind: "ballRod", shaft: axis, armBall: mm3, hinge: axis, hornBall: mm3 },
    { kind: "bentRod", bend: 30, tipTo: "port", skew: 5 },
    {
      kind: "track",
      arm: 17,
      armAt: 40,
      base: 100,
      rise: 2,
      trackAt: -6,
      travel: 34,
      cam: { kind: "powers", length: 34, terms: [{ deflection: 4, power: 1 }] },
    },
    {
      kind: "track",
      arm: 17,
      armAt: 40,
      base: 100,
      rise: 2,
      aside: 1,
      trackAt: -6,
      travel: 34,
      cam: {
        kind: "table",
        points: [
          [0, 0],
          [34, 30],
        ],
      },
    },
    { kind: "torqueRod", sense: "opposite" },
    { kind: "cables", arm: 12, horn: 14, base: 400, crossed: true },
  ];
  const linkage = { kind: "chain", links: [...kinds, { kind: "chain", links: kinds }] };
  const data = {
    ...smallModel(),
    surfaces: { flap: { servo: { channel: 1, bench: { level: 1500, down: 1900 }, linkage } } },
  };
  const parsed = parseModel(data);
  expect(parsed).toEqual({ model: data as unknown as Model });
});

test.each([
  "constructor",
  "hasOwnProperty",
  "isPrototypeOf",
  "propertyIsEnumerable",
  "toLocaleString",
  "toString",
  "valueOf",
  "__proto__",
  "__defineGetter__",
  "__lookupSetter__",
])("no surface, control or detent is called %s, to which every object answers", (name) => {
  const { surfaces, controls } = smallModel();
  const named = (value: unknown) => JSON.parse(`{${JSON.stringify(name)}: ${JSON.stringify(value)}}`);
  expect(parseModel({ ...smallModel(), surfaces: named(surfaces.flap) })).toHaveProperty("problems");
  expect(parseModel({ ...smallModel(), controls: named({ kind: "stick" }) })).toHaveProperty("problems");
  const detents = { kind: "selector", detents: [name] };
  expect(parseModel({ ...smallModel(), controls: { ...controls, other: detents } })).toHaveProperty(
    "problems",
  );
});
