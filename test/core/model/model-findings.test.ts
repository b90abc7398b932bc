import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { copyPlain } from "../../../packages/core/src/model/copy-plain.ts";
import { describeValue } from "../../../packages/core/src/model/describe-value.ts";
import { findAt } from "../../../packages/core/src/model/json.ts";
import { modelFindings } from "../../../packages/core/src/model/model-findings.ts";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { fullModel } from "./full-model.ts";

/** The findings of the full model once `change` has been made to it. */
function findingsAfter(change: (model: ReturnType<typeof fullModel>) => void) {
  const model = fullModel();
  change(model);
  const parsed = parseModel(model);
  return modelFindings("problems" in parsed ? parsed.problems : []);
}

describe("modelFindings", () => {
  test("say what was expected, what was found, and where", () => {
    const findings = findingsAfter((model) => Object.assign(model.radio, { centre: "wide" }));
    expect(findings).toMatchObject([
      {
        code: "model-malformed",
        severity: "error",
        at: "radio.centre",
        message: 'Expected pulse, 100 to 5000 microseconds, got "wide".',
        do: "Correct it.",
        numbers: {},
      },
    ]);
  });

  test("keep the value and the limit of a number beyond the plausible, and doubt its unit", () => {
    const [finding] = findingsAfter((model) => Object.assign(model.surfaces.flap, { chord: 0.062 }));
    expect(finding?.numbers).toEqual({ value: 0.062, limit: 1 });
    expect(finding?.do).toContain("unit");
  });

  test("say what is to add, what can stand in place of a key that nothing reads, and what was likely meant", () => {
    const [missing] = findingsAfter((model) => Reflect.deleteProperty(model.radio, "reach"));
    expect(missing?.do).toBe("Add it.");
    const [unknown] = findingsAfter((model) => Object.assign(model.supply, { paint: "red" }));
    expect(unknown?.do).toMatch(/voltage, current\.$/);
    const [misspelt] = findingsAfter((model) => Object.assign(model, { supply: { curent: 3 } }));
    expect(misspelt?.do).toBe('Did you mean "current"?');
    const [word] = findingsAfter((model) => Object.assign(model.radio, { endPoints: "clmp" }));
    expect(word?.do).toBe('Did you mean "clamp"?');
    const [far] = findingsAfter((model) => Object.assign(model.radio, { endPoints: "none of these" }));
    expect(far?.do).toBe("Correct it.");
  });

  test("are none for a sound model", () => {
    expect(findingsAfter(() => {})).toEqual([]);
  });
});

describe("describeValue", () => {
  test("says of any JSON value what it is, in one line of at most 63 characters where it is short of escapes", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(describeValue(value)).not.toMatch(/\n/);
        expect(describeValue(value)).not.toBe("");
      }),
    );
    expect([12.5, true, null, undefined, [1, 2], {}].map(describeValue)).toEqual([
      "12.5",
      "true",
      "null",
      "nothing",
      "a list of 2",
      "an object",
    ]);
    expect([() => 1, 5n, Symbol("x")].map(describeValue)).toEqual(["a function", "a bigint", "a symbol"]);
  });

  test("cuts a text after 60 characters, and no shorter one", () => {
    expect(describeValue("x".repeat(60))).toBe(`"${"x".repeat(60)}"`);
    expect(describeValue("x".repeat(61))).toBe(`"${"x".repeat(60)}…"`);
    expect(describeValue('say "level"')).toBe('"say \\"level\\""');
  });
});

describe("findAt", () => {
  test("finds what stands at an address, and undefined where nothing does or only a prototype's key", () => {
    const data = { a: [{ b: 0 }, null], c: "text" };
    expect(findAt(data, [])).toBe(data);
    expect(findAt(data, ["a", 0, "b"])).toBe(0);
    expect(findAt(data, ["a", 1])).toBeNull();
    for (const address of [["a", 2], ["a", 1, "b"], ["c", "length"], ["constructor"], ["a", 0, "toString"]])
      expect(findAt(data, address)).toBeUndefined();
    expect(findAt(undefined, ["a"])).toBeUndefined();
  });
});

describe("copyPlain", () => {
  const depth = (levels: number) => {
    let deep: unknown = 1;
    for (let level = 0; level < levels; level += 1) deep = [deep];
    return copyPlain(deep);
  };

  test("takes 32 levels and 50 000 values, and not one more", () => {
    expect(depth(32)).toHaveProperty("data");
    expect(depth(33)).toMatchObject({ problems: [{ received: "more than 32 levels" }] });
    // The list itself is a value too.
    expect(copyPlain(Array(49_999).fill(0))).toHaveProperty("data");
    expect(copyPlain(Array(50_000).fill(0))).toMatchObject({
      problems: [{ address: [49_999], received: "more than 50000 values" }],
    });
  });

  test("names at most 100 problems, of a list and of an object", () => {
    const many = Array.from({ length: 150 }, () => Number.NaN);
    for (const data of [many, { ...many }]) {
      const copied = copyPlain(data);
      expect("problems" in copied && copied.problems).toHaveLength(100);
    }
  });

  test("takes an object twice where it does not hold itself, after a fault inside it too", () => {
    const shared = { bad: Number.NaN };
    const copied = copyPlain([shared, shared]);
    expect(copied).toMatchObject({
      problems: [
        { address: [0, "bad"], received: "NaN" },
        { address: [1, "bad"], received: "NaN" },
      ],
    });
  });

  test("takes an object of another realm, whose prototype has none", () => {
    const foreign = Object.assign(Object.create(Object.create(null)), { a: 1 });
    expect(copyPlain(foreign)).toEqual({ data: { a: 1 } });
  });

  test("gives 0 for -0, and every other JSON value as it is", () => {
    const zero = copyPlain([-0]);
    expect("data" in zero && Object.is((zero.data as readonly number[])[0], 0)).toBe(true);
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        fc.pre(!JSON.stringify(value).includes("__proto__"));
        expect(copyPlain(value)).toEqual({ data: JSON.parse(JSON.stringify(value)) });
      }),
    );
  });
});
