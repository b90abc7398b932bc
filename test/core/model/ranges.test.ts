import { expect, test } from "vitest";
import { parseModel } from "../../../packages/core/src/model/parse-model.ts";
import { smallModel } from "./small-model.ts";

// Common practice, no source: the bounds are far outside anything built, so that only a slip of the unit passes them.

type Put = (model: ReturnType<typeof smallModel>, value: unknown) => void;
const bench =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.surfaces.flap.servo.bench, { [key]: value });
const servo =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.surfaces.flap.servo, { [key]: value });
const surface =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.surfaces.flap, { [key]: value });
const radio =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.radio, { [key]: value });
const whole =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model, { [key]: value });
const type =
  (key: string): Put =>
  (model, value) =>
    servo("type")(model, { [key]: value });
const linkage =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.surfaces.flap.servo.linkage, { [key]: value });
const gear: Put = (model, value) => Object.assign(model.controls, { gear: value });
const groups =
  (kind: string): Put =>
  (model, value) =>
    whole("groups")(model, { flaps: { kind, surfaces: value, ...(kind === "matched" && { within: 1 }) } });
const stick =
  (key: string): Put =>
  (model, value) =>
    Object.assign(model.controls, { roll: { kind: "stick", [key]: value } });

test.each<[string, Put, readonly unknown[], readonly unknown[]]>([
  ["a pulse, us", bench("level"), [100, 5000], [99.9, 5000.1, -1500]],
  ["a guard, us", bench("guard"), [0, 1000], [-0.1, 1000.1]],
  ["a channel", servo("channel"), [1, 32], [0, 33, 1.5]],
  ["a chord, mm", surface("chord"), [1, 2000], [0.99, 2001]],
  ["a span, mm", surface("span"), [1, 10_000], [0.99, 10_001]],
  [
    "a pair of allowed deflections, degrees",
    surface("allowed"),
    [[-120, 120]],
    [[-121, 0], [0, 121], [0], [0, 1, 2]],
  ],
  ["an arm, mm", linkage("arm"), [1, 300], [0.9, 301]],
  ["a torque, N m", type("torque"), [0.01, 200], [0, 201]],
  ["a rotation, degrees per us", type("rotation"), [0.001, 1], [0, 1.1]],
  ["a reach, percent", radio("reach"), [0.1, 200], [0, 200.1]],
  ["a step, percent", radio("step"), [0.001, 100], [0, -1]],
  ["100 percent, us", radio("per100"), [50, 2500, { below: 400, above: 512 }], [49, 2501, { below: 400 }]],
  ["curve points", radio("curvePoints"), [0, 100], [-1, 2.5, 101]],
  ["a trim, percent", stick("trim"), [0, 100], [-1, 101]],
  ["a rest", stick("rests"), [-1, 0, 1], [0.5, 2]],
  ["a selector", gear, [{ kind: "selector", detents: ["up"] }], [{ kind: "selector", detents: [] }]],
  ["surfaces together", groups("together"), [["flap"]], [[], ["flap", "flap"]]],
  ["matched surfaces", groups("matched"), [["flap", "tab"]], [["flap"], ["flap", "flap"]]],
  [
    "an airspeed, m/s",
    whole("airspeed"),
    [{ otherwise: 34, gear: { up: 350 } }],
    [{ otherwise: 0 }, {}, { otherwise: 34, gear: 351 }],
  ],
  [
    "a failsafe",
    whole("failsafe"),
    [{ gear: "up", roll: -1 }, {}],
    [{ roll: 1.1 }, { gear: "" }, { gear: null }],
  ],
  ["a transit, s", whole("transit"), [{ gear: 0 }, { gear: 600 }], [{ gear: -1 }, { gear: 601 }]],
  ["yields", whole("yields"), [{ "rudder.upper": ["gear"] }], [{ flap: [] }, { flap: "gear" }]],
  ["a model's name", whole("name"), ["x", "x".repeat(200)], ["", "x".repeat(201), "a\nb", 3]],
])("%s is taken at its bounds and refused beyond", (_, put, taken, refused) => {
  const parse = (value: unknown) => {
    const model = smallModel();
    put(model, value);
    return parseModel(model);
  };
  for (const value of taken) expect(parse(value)).toHaveProperty("model");
  for (const value of refused) expect(parse(value)).toHaveProperty("problems");
});
