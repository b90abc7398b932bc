import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Bench } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { editModel, type ModelChange } from "../../../packages/dsl/src/source/edit-model.ts";
import { readData } from "../../../packages/dsl/src/source/read-model.ts";
import { brief, examples, sourceIn, sourceOf } from "./fixture-source.ts";

const names = "atThrow, deg, mm, model, pct, selector, stopAt, us";

/** A model file whose bench is this text. */
const withBench = (
  bench: string,
  before = "",
  imports = names,
) => `import { ${imports} } from "@hingeline/dsl";
${before}
export default model("Wrenfield 20", {
  surfaces: {
    flap: { servo: { channel: 1, bench: ${bench} } },
  },
});
`;

const bench = "surfaces.flap.servo.bench";

/** The model file after the changes; the files where there are several. */
async function edit(files: string | Readonly<Record<string, string>>, ...changes: readonly ModelChange[]) {
  const source = await sourceOf(typeof files === "string" ? { "model.ts": files } : files);
  const edited = editModel(source, changes);
  if ("refusals" in edited) throw new Error(brief(edited.refusals).join("\n"));
  return typeof files === "string" ? (edited.files[0]?.text ?? files) : edited.files;
}

async function refusal(text: string, ...changes: readonly ModelChange[]) {
  const edited = editModel(await sourceOf({ "model.ts": text }), changes);
  return "refusals" in edited
    ? edited.refusals.map(({ place, what, remedy }) => [place.text, what, remedy])
    : [];
}

describe("editModel changes one literal and nothing else", () => {
  test.each([
    ["{ level: us(1872), down: us(1208) }", "level", 1874, "{ level: us(1874), down: us(1208) }"],
    [
      "{ level: us( /*a*/ 1872 /*b*/ ), down: us(1208) }",
      "level",
      1874,
      "{ level: us( /*a*/ 1874 /*b*/ ), down: us(1208) }",
    ],
    ["{ level: us(1_872), down: us(1208) }", "level", 1874.5, "{ level: us(1874.5), down: us(1208) }"],
    ["{ level: us(1872.0), down: us(1208) }", "level", 1874, "{ level: us(1874.0), down: us(1208) }"],
    ["{ level: us(1872.50), down: us(1208) }", "level", 1874.25, "{ level: us(1874.25), down: us(1208) }"],
    ["{ level: us(1872.50), down: us(1208) }", "level", 1874.125, "{ level: us(1874.125), down: us(1208) }"],
    ["{ level: us(1872.5), down: us(1208) }", "level", 1874, "{ level: us(1874), down: us(1208) }"],
    ["{ 'level': (us(1872)), down: us(1208) }", "level", 1874, "{ 'level': (us(1874)), down: us(1208) }"],
    ["{ level: 1872, down: 1208 }", "level", 1874, "{ level: 1874, down: 1208 }"],
    [
      "{ down: us(1208), readings: [[us(1208), deg(-3)]] }",
      "readings[0][1]",
      -4,
      "{ down: us(1208), readings: [[us(1208), deg(-4)]] }",
    ],
    [
      "{ down: us(1208), readings: [[us(1208), deg(- 3)]] }",
      "readings[0][1]",
      4,
      "{ down: us(1208), readings: [[us(1208), deg(4)]] }",
    ],
    [
      "{ down: us(1208), readings: [[us(1208), deg(3)]] }",
      "readings[0][1]",
      -0.5,
      "{ down: us(1208), readings: [[us(1208), deg(-0.5)]] }",
    ],
    [
      "{ down: us(1208), readings: [[us(1208), atThrow(mm(29))]] }",
      "readings[0][1].mm",
      29.5,
      "{ down: us(1208), readings: [[us(1208), atThrow(mm(29.5))]] }",
    ],
    [
      "{ down: stopAt(us(1208), 'contact') }",
      "down",
      { kind: "stop", pulse: 1210, reason: "deadCentre" },
      "{ down: stopAt(us(1210), 'deadCentre') }",
    ],
    ["{ measured: { on: `2026-03-01` } }", "measured.on", "2026-04-02", "{ measured: { on: `2026-04-02` } }"],
    ["{ guard: us(3), level: us(1872) }", "guard", 3, "{ guard: us(3), level: us(1872) }"],
  ])("%s, %s = %j", async (before, at, value, after) => {
    const address = `${bench}.${at}`;
    expect(await edit(withBench(before), { address, value })).toBe(withBench(after));
  });

  test("in a constant, in another file, in a spread, wherever it stands", async () => {
    const model = `import { model } from "@hingeline/dsl";
import { flap } from "./flap.ts";
export default model("Wrenfield", { surfaces: { flap: { ...flap, chord: 3 } } });
`;
    const flap = `import { us } from "@hingeline/dsl";
const level = us(1872); // cold
export const flap = { servo: { bench: { level } } };
`;
    expect(
      await edit({ "model.ts": model, "flap.ts": flap }, { address: `${bench}.level`, value: 1874 }),
    ).toEqual([{ path: "flap.ts", text: flap.replace("1872", "1874") }]);
  });

  test("with a byte order mark, tabs and CRLF", async () => {
    const text = `\ufeff${withBench("{\n\tlevel: us(1872), // cold\n\tdown: us(1208)\n\t}")}`.replaceAll(
      "\n",
      "\r\n",
    );
    expect(await edit(text, { address: `${bench}.down`, value: 1210 })).toBe(text.replace("1208", "1210"));
  });
});

describe("editModel adds what is not there yet", () => {
  const readings = [
    [1872, 0],
    [1655, 13.5],
    [1440, { kind: "throw", mm: 29 }, "back"],
  ];
  const add = (text: string, at = "readings", value: unknown = readings) =>
    edit(text, { address: `${bench}.${at}`, value });

  test.each([
    [
      "{ level: us(1872) }",
      '{ level: us(1872), readings: [[us(1872), deg(0)], [us(1655), deg(13.5)], [us(1440), atThrow(mm(29)), "back"]] }',
    ],
    [
      "{ level: us(1872), }",
      '{ level: us(1872), readings: [[us(1872), deg(0)], [us(1655), deg(13.5)], [us(1440), atThrow(mm(29)), "back"]], }',
    ],
    [
      "{ level: us(1872), readings: [] }",
      '{ level: us(1872), readings: [[us(1872), deg(0)], [us(1655), deg(13.5)], [us(1440), atThrow(mm(29)), "back"]] }',
    ],
    [
      `{
      level: us(1872), // cold
      // not measured yet
    }`,
      `{
      level: us(1872), // cold
      // not measured yet
      readings: [
        [us(1872), deg(0)],
        [us(1655), deg(13.5)],
        [us(1440), atThrow(mm(29)), "back"],
      ],
    }`,
    ],
    [
      `{
\t\t\tlevel: us(1872) // cold
\t\t}`,
      `{
\t\t\tlevel: us(1872), // cold
\t\t\treadings: [
\t\t\t\t[us(1872), deg(0)],
\t\t\t\t[us(1655), deg(13.5)],
\t\t\t\t[us(1440), atThrow(mm(29)), "back"]
\t\t\t]
\t\t}`,
    ],
    [
      `{
      level: us(1872),
      readings: [],
    }`,
      `{
      level: us(1872),
      readings: [
        [us(1872), deg(0)],
        [us(1655), deg(13.5)],
        [us(1440), atThrow(mm(29)), "back"],
      ],
    }`,
    ],
  ])("readings to %s", async (before, after) => {
    expect(await add(withBench(before))).toBe(withBench(after));
    const crlf = (text: string) => withBench(text).replaceAll("\n", "\r\n");
    expect(await add(crlf(before))).toBe(crlf(after));
  });

  test("and the names it needs to the import, in their order, alone or in lines", async () => {
    const before = "{ level: us(1872) }";
    const after =
      '{ level: us(1872), readings: [[us(1872), deg(0)], [us(1655), deg(13.5)], [us(1440), atThrow(mm(29)), "back"]] }';
    for (const [old, wanted] of [
      ["model, us", "atThrow, deg, mm, model, us"],
      ["us, model", "us, model, atThrow, deg, mm"],
      ["\n  model,\n  us,\n", "\n  atThrow,\n  deg,\n  mm,\n  model,\n  us,\n"],
      ["model, type Us, us", "atThrow, deg, mm, model, type Us, us"],
    ])
      expect(await add(withBench(before, "", old))).toBe(withBench(after, "", wanted));
  });

  test("by the names that the file gives them", async () => {
    const before = withBench("{ level: h.us(1872) }")
      .replace(/\{ atThrow.*?\}/, "* as h")
      .replace("default model", "default h.model");
    expect(await add(before, "readings", [[1872, 0]])).toBe(
      before.replace("h.us(1872)", "h.us(1872), readings: [[h.us(1872), h.deg(0)]]"),
    );
    const renamed = withBench("{ level: micro(1872) }", "", "deg as degrees, model, us as micro");
    expect(await add(renamed, "readings", [[1872, 0]])).toBe(
      renamed.replace("micro(1872)", "micro(1872), readings: [[micro(1872), degrees(0)]]"),
    );
  });

  test("plain numbers to a file that uses no units", async () => {
    const text = `export default { surfaces: { flap: { servo: { bench: { level: 1872 } } } } };\n`;
    expect(await add(text)).toBe(
      text.replace(
        "level: 1872",
        'level: 1872, readings: [[1872, 0], [1655, 13.5], [1440, { kind: "throw", mm: 29 }, "back"]]',
      ),
    );
  });

  test("a date, a stop, a guard, in the quotes of the file", async () => {
    const text = withBench("{ level: us(1872), down: us(1208) }", "", "model, us").replaceAll('"', "'");
    expect(
      await edit(
        text,
        { address: `${bench}.measured.on`, value: "2026-03-01" },
        { address: `${bench}.guard`, value: 4 },
        { address: `${bench}.up`, value: { kind: "stop", pulse: 1890, reason: "contact", current: 0.8 } },
        { address: `${bench}.measured.supply`, value: 6 },
      ),
    ).toBe(
      text
        .replace("{ model, us }", "{ amps, model, stopAt, us, volts }")
        .replace(
          "us(1208)",
          "us(1208), measured: { on: '2026-03-01', supply: volts(6) }, guard: us(4), up: stopAt(us(1890), 'contact', amps(0.8))",
        ),
    );
  });
});

describe("editModel changes a list of readings", () => {
  const list = `{
      readings: [
        // down
        [us(1208), deg(41.0)], // cold
        [us(1440), deg(29)],

        /* up */ [us(1655), deg(13.5)], // warm
        [us(1872), deg(0)] // level
      ]
    }`;
  const old = [
    [1208, 41],
    [1440, 29],
    [1655, 13.5],
    [1872, 0],
  ];
  test.each([
    [
      "one in the middle",
      [...old.slice(0, 2), [1500, 24], ...old.slice(2)],
      (text: string) =>
        text.replace("[us(1440), deg(29)],\n", "[us(1440), deg(29)],\n        [us(1500), deg(24)],\n"),
    ],
    [
      "one behind a remark",
      [old[0], [1300, 36], ...old.slice(1)],
      (text: string) => text.replace("// cold\n", "// cold\n        [us(1300), deg(36)],\n"),
    ],
    [
      "one at the start",
      [[1190, 42], ...old],
      (text: string) =>
        text.replace("[\n        // down", "[\n        [us(1190), deg(42)],\n        // down"),
    ],
    [
      "two at the end",
      [...old, [1900, -2], [1910, -2.5]],
      (text: string) =>
        text.replace(
          "deg(0)] // level",
          "deg(0)], // level\n        [us(1900), deg(-2)],\n        [us(1910), deg(-2.5)]",
        ),
    ],
    ["one gone", old.toSpliced(1, 1), (text: string) => text.replace("        [us(1440), deg(29)],\n", "")],
    [
      "one gone whose remark stays",
      old.toSpliced(0, 1),
      (text: string) => text.replace("[us(1208), deg(41.0)], // cold", "// cold"),
    ],
    [
      "the last gone",
      old.slice(0, 3),
      (text: string) =>
        text.replace("13.5)], // warm", "13.5)] // warm").replace("[us(1872), deg(0)] // level", "// level"),
    ],
    [
      "all changed",
      old.map(([pulse = 0, angle = 0]) => [pulse + 1, angle + 1]),
      (text: string) =>
        text
          .replace("1208", "1209")
          .replace("41.0", "42.0")
          .replace("1440", "1441")
          .replace("deg(29)", "deg(30)")
          .replace("1655", "1656")
          .replace("13.5", "14.5")
          .replace("1872", "1873")
          .replace("deg(0)", "deg(1)"),
    ],
    [
      "a way added",
      [[1208, 41, "out"], ...old.slice(1)],
      (text: string) => text.replace("deg(41.0)]", 'deg(41.0), "out"]'),
    ],
  ] as const)("%s", async (_, value, change) => {
    const text = withBench(list);
    expect(await edit(text, { address: `${bench}.readings`, value })).toBe(change(text));
  });

  test.each([
    [
      "[[us(1), deg(1)], [us(2), deg(2)], [us(3), deg(3)]]",
      [
        [1, 1],
        [3, 3],
      ],
      "[[us(1), deg(1)], [us(3), deg(3)]]",
    ],
    ["[[us(1), deg(1)], [us(2), deg(2)]]", [[2, 2]], "[[us(2), deg(2)]]"],
    ["[[us(1), deg(1)], [us(2), deg(2)]]", [[1, 1]], "[[us(1), deg(1)]]"],
    ["[[us(1), deg(1)], [us(2), deg(2)],]", [], "[]"],
    [
      "[ [us(1), deg(1)] ]",
      [
        [0, 0],
        [1, 1],
      ],
      "[ [us(0), deg(0)], [us(1), deg(1)] ]",
    ],
  ])("on one line: %s to %j", async (before, value, after) => {
    const text = withBench(`{ readings: ${before} }`);
    expect(await edit(text, { address: `${bench}.readings`, value })).toBe(
      withBench(`{ readings: ${after} }`),
    );
  });
});

describe("editModel refuses", () => {
  test("to overwrite what is computed, and says what to do", async () => {
    expect(
      await refusal(withBench("{ level: us(1500 + 372) }"), { address: `${bench}.level`, value: 1874 }),
    ).toEqual([
      [
        "1500 + 372",
        `${bench}.level is computed here, and is left alone.`,
        "Change it by hand so that it comes to 1874.",
      ],
    ]);
    expect(
      await refusal(withBench("{ down: us(trim * 2) }", "const trim = 600;"), {
        address: `${bench}.down`,
        value: { kind: "stop", pulse: 1210, reason: "contact" },
      }),
    ).toEqual([
      ["trim * 2", expect.stringContaining("computed here"), expect.stringContaining('"pulse":1210')],
    ]);
  });

  test("what would change another servo too, unless both are to change alike", async () => {
    const text = `import { model, us } from "@hingeline/dsl";
const level = us(1500);
export default model("x", { surfaces: { a: { servo: { bench: { level } } }, b: { servo: { bench: { level } } } } });
`;
    const change = (name: string, value: number) => ({
      address: `surfaces.${name}.servo.bench.level`,
      value,
    });
    expect(await refusal(text, change("a", 1501))).toEqual([
      [
        "1500",
        "What stands here is used more than once: surfaces.b.servo.bench.level would change too.",
        "Write the two apart first, or change both alike.",
      ],
    ]);
    expect(await refusal(text, change("a", 1501), change("b", 1502))).toEqual([
      ["1500", "Two changes would be written at one place.", "Change it by hand."],
    ]);
    expect(await edit(text, change("a", 1501), change("b", 1501))).toBe(text.replace("1500", "1501"));
  });

  test.each([
    ["a remark that would be lost", "{ down: stopAt(us(1208), /* skin */ 'contact') }", "down", 1210],
    ["a reading from a spread", "{ readings: [...inner, [us(2), deg(2)]] }", "readings", [[2, 2]]],
    ["a name that means something else", "{ level: us(1) }", "measured", { supply: 6 }],
    ["a value that is no data", "{ level: us(1) }", "level", Number.NaN],
    ["a part of no bench", "{ level: us(1) }", "unheard", 3],
    ["an address into a number", "{ level: us(1) }", "level.deep", 3],
    ["a prototype", "{ level: us(1) }", "__proto__.level", 3],
  ])("%s", async (_, text, at, value) => {
    const before = "const inner = [[us(1), deg(1)]];\nconst volts = 3;";
    expect(await refusal(withBench(text, before), { address: `${bench}.${at}`, value })).toHaveLength(1);
  });

  test("a model that cannot be read without running it", async () => {
    const text = withBench("{ level: us(Math.round(1.2)) }");
    expect(await refusal(text, { address: `${bench}.level`, value: 1 })).toEqual([
      ["Math", expect.any(String), expect.any(String)],
    ]);
  });
});

test("a bench session on the tow plane leaves a diff of the new numbers alone", async () => {
  const before = readFileSync(join(examples, "bramblehook.ts"), "utf8");
  const source = await sourceIn(examples, "bramblehook.ts");
  const read = readData(source);
  if ("refusals" in read) throw new Error(brief(read.refusals).join("\n"));
  const { surfaces } = read.data as { surfaces: Record<string, { servo: { bench: Bench } }> };
  const { level = 0, readings = [] } = surfaces.flapLeft?.servo.bench ?? {};
  const [pulse = 0] = readings[2] ?? [];
  const at = "surfaces.flapLeft.servo.bench";
  const edited = editModel(source, [
    { address: `${at}.level`, value: level + 2 },
    { address: `${at}.readings[2]`, value: [pulse + 1, 8.5] },
    { address: `${at}.up.pulse`, value: 1879 },
  ]);
  const after = "files" in edited ? (edited.files[0]?.text ?? "") : "";
  const old = before.split("\n");
  const changed = after.split("\n").flatMap((line, index) => (line === old[index] ? [] : [line.trim()]));
  expect(changed).toEqual([
    'up: stopAt(us(1879), "contact"),',
    `level: us(${level + 2}),`,
    `[us(${pulse + 1}), deg(8.5)],`,
  ]);
  expect(after.split("\n").length).toBe(old.length);
});
