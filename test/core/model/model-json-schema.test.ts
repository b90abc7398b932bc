import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { modelJsonSchema } from "../../../packages/core/src/model/model-json-schema.ts";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { arbitraryModel } from "../../support/arbitrary-model.ts";
import { arbitraryMutation } from "../../support/arbitrary-mutation.ts";
import { smallModel } from "./small-model.ts";

// ajv 8 is the outside oracle: an independent validator of JSON Schema 2020-12.
const options = { strict: true, strictTuples: false, strictTypes: false, strictRequired: false };
// Made anew in each test: what one test has made would hide from the next what a mutant makes otherwise.
const validator = () => new Ajv2020(options).compile(modelJsonSchema());

test("the JSON Schema takes every valid model", () => {
  const validate = validator();
  expect(validate(smallModel())).toBe(true);
  fc.assert(
    fc.property(arbitraryModel, (model) => {
      expect(validate(model)).toBe(true);
    }),
  );
});

test("the JSON Schema and parseModel agree on every model with one part replaced, taken out or too many", () => {
  const validate = validator();
  let refused = 0;
  fc.assert(
    fc.property(arbitraryModel.chain(arbitraryMutation), (data) => {
      const taken = "model" in parseModel(data);
      if (!taken) refused += 1;
      expect(validate(data)).toBe(taken);
    }),
    { numRuns: 400 },
  );
  expect(refused).toBeGreaterThan(10);
});

test.each([
  ["a detent twice", { controls: { gear: { kind: "selector", detents: ["up", "up"] } } }],
  ["no surface", { surfaces: {} }],
  ["no control", { controls: {} }],
  ["a surface with no servo", { surfaces: { flap: { chord: 62 } } }],
  [
    "a surface with servo and servos",
    {
      surfaces: { flap: { ...smallModel().surfaces.flap, servos: { a: smallModel().surfaces.flap.servo } } },
    },
  ],
  ["a control named otherwise", { controls: { otherwise: { kind: "stick" } } }],
  ["an airspeed for constructor", { airspeed: { otherwise: 30, constructor: 10 } }],
  [
    "a date that is none",
    {
      surfaces: {
        flap: { servo: { channel: 1, bench: { level: 1500, down: 1600, measured: { on: "2025-13-01" } } } },
      },
    },
  ],
])("the JSON Schema refuses %s, as parseModel does", (_, change) => {
  const validate = validator();
  const data = { ...smallModel(), ...change };
  expect(validate(data)).toBe(false);
  expect(parseModel(data)).toHaveProperty("problems");
});

test("modelJsonSchema gives the same bytes every time and describes units", () => {
  const text = JSON.stringify(modelJsonSchema());
  expect(JSON.stringify(modelJsonSchema())).toBe(text);
  expect(modelJsonSchema().$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  const numbers = text.match(/\{[^{}]*"type":"(?:number|integer)"[^{}]*\}/g) ?? [];
  const bare = numbers.filter((schema) => !/"(?:const|enum|description)"/.test(schema));
  expect(numbers.length).toBeGreaterThan(30);
  expect(bare).toEqual([]);
});

/** Every schema in a JSON Schema, itself among them. */
function schemasIn(value: unknown): readonly Readonly<Record<string, unknown>>[] {
  if (Array.isArray(value)) return value.flatMap(schemasIn);
  if (typeof value !== "object" || value === null) return [];
  return [value as Readonly<Record<string, unknown>>, ...Object.values(value).flatMap(schemasIn)];
}

const units = [
  "microseconds",
  "percent",
  "percent of the stick's travel to one side",
  "degrees",
  "degrees Celsius",
  "per degree",
  "kilogram square metres",
  "degrees per second",
  "degrees per microsecond",
  "millimetres",
  "metres",
  "metres per second",
  "seconds",
  "volts",
  "amperes",
  "newtons",
  "newton metres",
];

test("the JSON Schema says of every number what it is, within what limits and in which unit", () => {
  const described = schemasIn(modelJsonSchema()).filter(
    ({ type, description }) => (type === "number" || type === "integer") && description !== undefined,
  );
  expect(described.length).toBeGreaterThan(30);
  for (const { description, minimum, exclusiveMinimum, maximum } of described) {
    const [, what = "", range = "", unit = ""] =
      /^(.+?), (-?[\d.]+ to -?[\d.]+|above 0, at most [\d.]+|a whole number from \d+ to \d+)(?: (.+))?$/.exec(
        String(description),
      ) ?? [];
    expect(what, String(description)).toMatch(/^[a-zA-Z]/);
    expect(["", ...units], String(description)).toContain(unit);
    expect(range).toContain(String(exclusiveMinimum ?? minimum));
    expect(range).toContain(String(maximum));
  }
});

// Editors show these names, and programs that make types of the schema take them over.
test("the JSON Schema names the parts of a model", () => {
  const { $defs } = modelJsonSchema();
  const parts =
    "AtExtension AtPart AtPulse AtThrow Axis BallRod Bench BentRod Cables Cam Chain Group Linkage Moves Place Point Pushrod Radio Reading Rod Selector SelectorMoves Servo ServoType Stick StickMoves Stop Surface TorqueRod Track";
  expect(Object.keys($defs ?? {}).toSorted()).toEqual(parts.split(" "));
});

test("the published schema is the committed one: every key, unit, range and word that can stand in a model", async () => {
  await expect(`${JSON.stringify(modelJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    "../../golden/model.schema.json",
  );
});
