import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { compile, type Model } from "@hingeline/core";
import { parseModel } from "@hingeline/core/schema";
import * as declarations from "@hingeline/dsl";
import bramblehook from "@hingeline/examples/bramblehook";
import fc from "fast-check";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { readingsModel } from "../../../packages/dsl/src/cli/readings-model.ts";
import type { TableReading } from "../../../packages/dsl/src/measure/read-readings.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));

/** Two flaps of the tow plane, the left one read both ways, and a rudder with two servos. */
const table = [
  "servo,pulse (us),deflection (deg),way",
  "flapLeft,1880,-2.5,out",
  "flapLeft,1765,8.6,out",
  "flapLeft,1172,44.6,out",
  "flapLeft,1765,8.3,back",
  "flapRight,1151,-0.3,",
  "flapRight,1472,24.9,",
  "flapRight,1838,44.5,",
  "rudder.upper,1180,-24.2",
  "rudder.upper,1504,0",
  "rudder.upper,1828,21.4",
  "rudder.lower,1150,-21.3",
  "rudder.lower,1478,0",
  "rudder.lower,1836,25.3",
].join("\r\n");

function ioWith(name: string, text: string) {
  return fakeIo({ disk: new Map([[`${fixtures}${name}`, text]]) });
}

async function init(text: string, name = "tug.csv"): Promise<string> {
  const { exitCode, stdout, stderr } = await run(["init", "--from", name], ioWith(name, text));
  expect([exitCode, stderr]).toEqual([0, ""]);
  return stdout;
}

/** What the formatter makes of a text. */
function formatted(text: string): string {
  const biome = join(root, "node_modules/@biomejs/biome/bin/biome");
  const args = [biome, "check", "--write", "--stdin-file-path=tug.ts"];
  return spawnSync(process.execPath, args, { cwd: root, input: text, encoding: "utf8" }).stdout;
}

function typeErrors(text: string): readonly string[] {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile).config as unknown;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const name = `${root}test/dsl/cli/from-readings.ts`;
  const host = ts.createCompilerHost(options);
  const read = host.getSourceFile;
  host.getSourceFile = (file, version, ...rest) =>
    file === name ? ts.createSourceFile(file, text, version) : read(file, version, ...rest);
  host.fileExists = (file) => file === name || ts.sys.fileExists(file);
  const program = ts.createProgram([name], options, host);
  return program
    .getSemanticDiagnostics(program.getSourceFile(name))
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, "\n"));
}

/** The model that a source declares. */
function modelOf(source: string): Model {
  const body = ts
    .transpileModule(source, { compilerOptions: { module: ts.ModuleKind.ESNext } })
    .outputText.replace(/^import \{([^}]*)\} from "@hingeline\/dsl";/, "const {$1} = dsl;")
    .replace("export default", "return");
  return new Function("dsl", body)(declarations) as Model;
}

describe("init --from", () => {
  test("makes a model that the formatter leaves as it is and the compiler of TypeScript accepts", async () => {
    const source = await init(table);
    expect(formatted(source)).toBe(source);
    expect(typeErrors(source)).toEqual([]);
    // Both checks see what they should.
    expect(formatted(source.replace("  radio", " radio"))).toBe(source);
    expect(typeErrors(source.replace("level: us(", "level: deg("))).not.toEqual([]);
  });

  test("keeps every reading with its way, and takes level and stops from them", async () => {
    const { surfaces, name } = modelOf(await init(table));
    expect(name).toBe("tug");
    expect(surfaces.flapLeft?.servo).toEqual({
      channel: 1,
      bench: {
        up: 1880,
        // -2.5 deg at 1880 us and 8.3 deg at 1765 us, straight line between.
        level: 1853,
        down: 1172,
        readings: [
          [1880, -2.5, "out"],
          [1765, 8.6, "out"],
          [1172, 44.6, "out"],
          [1765, 8.3, "back"],
        ],
      },
    });
    expect(
      Object.entries(surfaces.rudder?.servos ?? {}).map(([part, { channel }]) => [part, channel]),
    ).toEqual([
      ["upper", 3],
      ["lower", 4],
    ]);
  });

  test("takes JSON as a list and by servo, to the same model", async () => {
    const flap = bramblehook.surfaces.flapLeft?.servo?.bench.readings ?? [];
    const list = flap.map(([pulse, deflection]) => ({ servo: "flapLeft", pulse, deflection }));
    const source = await init(JSON.stringify(list), "tug.json");
    expect(await init(JSON.stringify({ flapLeft: flap }), "tug.json")).toBe(source);
    expect(modelOf(source).surfaces.flapLeft?.servo?.bench.readings).toEqual(flap);
  });

  test("gives a model of the tow plane's readings that has no error", async () => {
    const readings = Object.fromEntries(
      Object.entries(bramblehook.surfaces).map(([name, { servo }]) => [name, servo?.bench.readings]),
    );
    const model = modelOf(await init(JSON.stringify(readings), "tug.json"));
    expect(parseModel(JSON.parse(JSON.stringify(model)))).toEqual({ model });
    expect(compile(model).findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });

  test("begins a file, and never over one that exists", async () => {
    const io = ioWith("tug.csv", table);
    expect((await run(["init", "--from", "tug.csv", "new.ts"], io)).exitCode).toBe(0);
    expect(io.disk.get(`${fixtures}new.ts`)).toBe(await init(table));
    expect((await run(["init", "--from", "tug.csv", "new.ts"], io)).exitCode).toBe(2);
  });

  test.each([
    ["servo,pulse,deflection\nflap 1,1500,0\nflap 1,1600,9", 'tug.csv: "flap 1" is no name of a servo'],
    ["1500,0", "tug.csv: surface needs readings at two pulses"],
    ["1500,0\n1600,-9", "tug.csv: surface was not read below level"],
    [
      "servo,pulse,deflection\na,1500,0\na,1600,9\na.b,1500,0\na.b,1600,9",
      'tug.csv: "a" has readings of its own',
    ],
    ["1500,nought", 'tug.csv: line 1: "nought" is no deflection'],
    ["1500,0\n1600,nine", 'tug.csv: line 2: "nine" is no deflection'],
  ])("refuses %j in one sentence", async (text, sentence) => {
    const { exitCode, stdout, stderr } = await run(["init", "--from", "tug.csv"], ioWith("tug.csv", text));
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`hingeline: ${sentence}`);
    expect(stderr.trim().split("\n")).toHaveLength(1);
  });
});

test("readingsModel of any readings gives them back, in the order in which they came", () => {
  const reading = fc.record({
    servo: fc.constantFrom("flap", "aileron", "rudder.upper", "rudder.lower"),
    pulseUs: fc.integer({ min: 800, max: 2200 }),
    deflectionDeg: fc.integer({ min: -300, max: 450 }).map((tenths) => tenths / 10),
  });
  fc.assert(
    fc.property(fc.array(reading, { minLength: 2, maxLength: 30 }), (readings: readonly TableReading[]) => {
      const made = readingsModel(readings, "any");
      if ("problem" in made) return;
      const { surfaces } = modelOf(made.source);
      for (const servo of new Set(readings.map((one) => one.servo))) {
        const [surface = "", part] = servo.split(".");
        const found = part === undefined ? surfaces[surface]?.servo : surfaces[surface]?.servos?.[part];
        expect(found?.bench.readings).toEqual(
          readings.filter((one) => one.servo === servo).map((one) => [one.pulseUs, one.deflectionDeg]),
        );
      }
    }),
    { numRuns: 60 },
  );
});
