import { join } from "node:path";
import { formatAddress } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { locate, locateAll } from "../../../packages/dsl/src/source/locate.ts";
import { readData } from "../../../packages/dsl/src/source/read-model.ts";
import { examples, fixtures, sourceIn, sourceOf } from "./fixture-source.ts";

const parts = `import { degPerS, nm, us } from "@hingeline/dsl";
export const level = us(1_490);
export const servo = { torque: nm(0.2), speed: degPerS(500) };
`;
const model = `import { atThrow, deg, matched, mm, model, us } from "@hingeline/dsl";
import { level, servo } from "./parts.ts";

const inner = [[level, deg(-3)], [us(1655), atThrow(mm(29))]];
const flap = { chord: mm(124 / 2), servo: { type: { ...servo, torque: 3 }, bench: { level, down: stop() } } };
function stop() { return us(1800); }

export default model("Wrenfield", {
  surfaces: {
    flap,
    tab: { ...flap, servo: { ...flap.servo, bench: { level: us(1500), readings: [...inner, [us(1800), deg(30)]] } } },
    far: { ...make(), chord: mm(9) },
    rudder: make(1),
  },
  groups: { flaps: matched(["flap", "tab"], { within: deg(1) }) },
});
`;

describe("locate finds", () => {
  // Each with the file and line, and there the words that end in what is found, or begin with it where that goes on.
  test.each([
    ["name", "exact", "model.ts:8", 'model("Wrenfield"', '"Wrenfield"'],
    ["surfaces.flap.servo.bench.level", "exact", "parts.ts:2", "us(1_490", "1_490"],
    ["surfaces.flap.servo.type.speed", "exact", "parts.ts:3", "degPerS(500", "500"],
    ["surfaces.flap.servo.type.torque", "exact", "model.ts:5", "torque: 3", "3"],
    ["surfaces.flap.chord", "computed", "model.ts:5", "mm(124 / 2", "124 / 2"],
    ["surfaces.flap.servo.bench.down", "computed", "model.ts:5", "down: stop()", "stop()"],
    ["surfaces.flap.servo.bench.down.pulse", "computed", "model.ts:5", "down: stop()", "stop()"],
    ["surfaces.tab.servo.bench.level", "exact", "model.ts:11", "level: us(1500", "1500"],
    ["surfaces.tab.servo.bench.readings[0][1]", "exact", "model.ts:4", "deg(-3", "-3"],
    ["surfaces.tab.servo.bench.readings[1][1].mm", "exact", "model.ts:4", "mm(29", "29"],
    [
      "surfaces.tab.servo.bench.readings[2]",
      "exact",
      "model.ts:11",
      "[us(1800), deg(30)]",
      "[us(1800), deg(30)]",
    ],
    [
      "surfaces.tab.servo.bench.readings[7]",
      "around",
      "model.ts:11",
      "readings: [...inner, [us(1800), deg(30)]]",
      "[...inner, [us(1800), deg(30)]]",
    ],
    [
      "surfaces.tab.servo.bench.up",
      "around",
      "model.ts:11",
      "bench: { level: us(1500), readings: [...inner, [us(1800), deg(30)]] }",
      "{ level: us(1500), readings: [...inner, [us(1800), deg(30)]] }",
    ],
    ["surfaces.far.chord", "exact", "model.ts:12", "mm(9", "9"],
    ["surfaces.far.servo.channel", "computed", "model.ts:12", "{ ...make()", "...make()"],
    ["surfaces.rudder.servo.channel", "computed", "model.ts:13", "rudder: make(1)", "make(1)"],
    ["groups.flaps.surfaces[1]", "exact", "model.ts:15", '"flap", "tab"', '"tab"'],
    ["groups.flaps.within", "exact", "model.ts:15", "within: deg(1", "1"],
    [
      "groups.flaps.kind",
      "computed",
      "model.ts:15",
      'matched(["flap", "tab"], { within: deg(1) })',
      'matched(["flap", "tab"], { within: deg(1) })',
    ],
  ])("%s %s at %s", async (address, stands, where, words, text) => {
    const files: Readonly<Record<string, string>> = { "model.ts": model, "parts.ts": parts };
    const [file = "", line = ""] = where.split(":");
    const sourceLine = files[file]?.split("\n")[Number(line) - 1] ?? "";
    const endColumn = sourceLine.indexOf(words) + words.length + 1;
    expect(locate(await sourceOf(files), address)).toEqual({
      file,
      line: Number(line),
      column: endColumn - text.length,
      endLine: Number(line),
      endColumn,
      text,
      sourceLine,
      stands,
    });
  });

  test("the name of a part where that is what is meant", async () => {
    const source = await sourceOf({ "model.ts": model, "parts.ts": parts });
    const within = "groups.flaps.within";
    expect(locateAll(source, [within], new Set([within])).get(within)).toMatchObject({
      text: "within",
      stands: "exact",
    });
    expect(locateAll(source, [within]).get(within)).toMatchObject({ text: "1" });
  });

  test("the whole model around a part that is not there at all", async () => {
    expect(locate(await sourceOf({ "model.ts": model, "parts.ts": parts }), "moves.flap")).toMatchObject({
      stands: "around",
      line: 8,
      column: 16,
      endLine: 16,
      endColumn: 3,
    });
  });

  test("nothing for what is no address and for a file that exports nothing", async () => {
    expect(locate(await sourceOf({ "model.ts": model }), "surfaces..[")).toBeUndefined();
    expect(locate(await sourceOf({ "model.ts": "const a = 1;" }), "name")).toBeUndefined();
    expect(locate(await sourceOf({}), "name")).toBeUndefined();
  });

  test.each(["bom.ts", "crlf-bom.ts"])("columns of %s without its byte order mark", async (name) => {
    const source = await sourceIn(join(fixtures, "read"), name);
    expect(locate(source, "radio.centre")).toMatchObject({ line: 5, column: 41, text: "1500" });
    const first = await sourceOf({ "model.ts": '\ufeffexport default { name: "one line" };' });
    expect(locate(first, "name")).toMatchObject({
      line: 1,
      column: 24,
      sourceLine: 'export default { name: "one line" };',
    });
  });
});

test.each(["bramblehook", "ostrevale", "slatewing"])(
  "every value of %s stands at a literal that says it, and the place is where its text is",
  async (name) => {
    const source = await sourceIn(examples, `${name}.ts`);
    const read = readData(source);
    if ("refusals" in read) throw new Error("not read");
    let count = 0;
    const walk = (value: unknown, address: readonly (string | number)[]) => {
      const place = locate(source, formatAddress(address));
      if (place === undefined) throw new Error(formatAddress(address));
      const lines = source.files.get(place.file)?.text.split("\n") ?? [];
      expect(lines[place.line - 1]).toBe(place.sourceLine);
      if (place.line === place.endLine)
        expect(place.sourceLine.slice(place.column - 1, place.endColumn - 1)).toBe(place.text);
      if (typeof value === "object" && value !== null) {
        for (const [key, part] of Object.entries(value))
          walk(part, [...address, Array.isArray(value) ? Number(key) : key]);
      } else if (place.stands === "exact") {
        expect(JSON.parse(place.text)).toBe(value);
        count += 1;
      }
    };
    const { radio, surfaces } = read.data as Record<string, unknown>;
    walk(radio, ["radio"]);
    walk(Object.values(surfaces as object)[0], ["surfaces", Object.keys(surfaces as object)[0] ?? ""]);
    expect(count).toBeGreaterThan(15);
  },
);
