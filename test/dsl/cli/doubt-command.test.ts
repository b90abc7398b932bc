import { canonicalJson, celsius, compile, deg, listDoubts, type Model, mm, us } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { tooFar, wrenfield } from "./wrenfield.ts";

const doubtOf = (model: Model, ...options: string[]) =>
  run(
    ["doubt", "model.json", ...options],
    fakeIo({ disk: new Map([[`${fixtures}model.json`, JSON.stringify(model)]]) }),
  );

const widest = (text: string) => Math.max(...text.split("\n").map((line) => line.length));

describe("doubt", () => {
  test("prints the budget of every position of the tow plane, at most 80 columns wide", async () => {
    const { exitCode, stdout, stderr } = await doubtOf(bramblehook);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(widest(stdout)).toBeLessThanOrEqual(80);
    await expect(stdout).toMatchFileSnapshot("../../golden/bramblehook.doubt.txt");
  });

  test("looks at one surface or control, and prints the same data as JSON", async () => {
    const options = ["--surface", "flapLeft", "--control", "flap"];
    const { stdout } = await doubtOf(bramblehook, ...options, "--format", "json");
    const settings = listDoubts(bramblehook, compile(bramblehook), { surface: "flapLeft", control: "flap" });
    expect(settings).toHaveLength(4);
    expect(stdout).toBe(`${canonicalJson({ model: "Bramblehook 26", settings })}\n`);
    const text = (await doubtOf(bramblehook, ...options)).stdout;
    expect(text.match(/^CHANNEL .*$/gm)).toEqual(["CHANNEL 5   flapLeft"]);
  });

  test("answers for one detent in one table, with what is most unsure and whether that is assumed", async () => {
    const { stdout } = await doubtOf(bramblehook, "--detent", "landing");
    expect(stdout).toMatchInlineSnapshot(`
      "DOUBT   Bramblehook 26
      What a position gives is true to plus and minus its doubt, which holds about
      95 % (k = 2). Halved: what the doubt would be with half of its largest cause. A
      cause with * is assumed: the model does not state it.

      WHAT MAKES IT MOST UNSURE
        free play   how far the surface moves to either side with the servo at rest;
                    assumed 0.35 deg: measure it and write freePlay: deg(...) on the
                    surface

        Position                     pulse  gives  doubt     improve  halved
                                        us    deg    deg       first     deg
        elevator: flap at landing   1540.0   +1.8    0.6  free play*     0.5
        flapLeft: flap at landing   1230.0  +42.1    0.6  free play*     0.4
        flapRight: flap at landing  1785.0  +42.1    0.6  free play*     0.4
      "
    `);
    expect((await doubtOf(bramblehook, "--stick", "+1")).stdout).toContain("elevator: pitch at +1");
    expect((await doubtOf(bramblehook, "--detent", "landng")).stderr).toContain(
      '"landng" is no detent of this plan; there is level, tow, takeoff, landing.',
    );
  });

  test("names only what this model leaves to be assumed, and how to state it", async () => {
    const stated = {
      ...bramblehook,
      surfaces: Object.fromEntries(
        Object.entries(bramblehook.surfaces).map(([name, surface]) => [
          name,
          { ...surface, freePlay: deg(0.1) },
        ]),
      ),
    } as Model;
    const flat = async (model: Model) => (await doubtOf(model)).stdout.replaceAll(/\s+/g, " ");
    expect(await flat(bramblehook)).toContain("assumed 0.35 deg: measure it and write freePlay: deg(...)");
    expect(await flat(stated)).not.toContain("freePlay: deg(");
    const { instruments: _, ...unstated } = stated;
    expect(await flat(unstated as Model)).toContain("assumed 1 us: write instruments: { pulse: us(...) }");
    expect(await flat(stated)).not.toContain("instruments: {");
  });

  test("draws where it is asked to, the same for the same seed, and says what they show", async () => {
    const draws = ["--draws", "20000", "--surface", "flapLeft"];
    const { stdout } = await doubtOf(bramblehook, ...draws);
    expect(stdout).toMatchInlineSnapshot(`
      "DOUBT   Bramblehook 26
      What a position gives is true to plus and minus its doubt, which holds about
      95 % (k = 2). Halved: what the doubt would be with half of its largest cause.
      Each alone: the standard doubt (k = 1) from that cause. A cause with * is
      assumed: the model does not state it.

      WHAT MAKES A POSITION UNSURE
        free play   how far the surface moves to either side with the servo at rest;
                    assumed 0.35 deg: measure it and write freePlay: deg(...) on the
                    surface
        step        the smallest step of the radio: what lies between two cannot be
                    sent
        meter       what the angle meter is true to
        zero        how well meter or rule stood at zero when the surface was at level
        dead band   the pulse span in which the servo does not answer
        tester      what the pulse that the servo tester shows is true to
        alignment   how square the meter stood to the hinge; assumed 0.05 deg
        jitter      how much the pulse itself trembles; assumed 0.5 us

      CHANNEL 5   flapLeft

        Position          pulse  gives  doubt     improve  halved
                             us    deg    deg       first     deg
        flap at level    1860.0   -0.2    0.7  free play*     0.6
        flap at tow      1795.0   +6.0    0.6  free play*     0.5
        flap at takeoff  1700.0  +13.8    0.6  free play*     0.5
        flap at landing  1230.0  +42.1    0.6  free play*     0.4

        Each alone, deg  free  step  meter  zero  dead  tester  alignment  jitter
                         play                     band
        flap at level    0.20  0.15   0.12  0.12  0.12    0.06       0.05    0.05
        flap at tow      0.20  0.13   0.12  0.12  0.10    0.05       0.05    0.04
        flap at takeoff  0.20  0.11   0.12  0.12  0.09    0.04       0.05    0.04
        flap at landing  0.20  0.07   0.12  0.12  0.05    0.03       0.05    0.02

        Its share, %     free  step  meter  zero  dead  tester  alignment  jitter
                         play                     band
        flap at level      36    20     12    12    13       3          2       2
        flap at tow        40    16     13    13    10       3          2       2
        flap at takeoff    44    13     14    14     8       2          3       2
        flap at landing    52     6     17    17     4       1          3       1

        Drawn by chance  draws    mean  standard  95 % from     to
                                   deg       deg        deg    deg
        flap at level    20000   -0.23      0.34       -0.9   +0.4
        flap at tow      20000   +5.98      0.32       +5.4   +6.6
        flap at takeoff  20000  +13.77      0.30      +13.2  +14.3
        flap at landing  20000  +42.10      0.28      +41.6  +42.6

        - At every position the draws agree with the doubt above.
      "
    `);
    expect((await doubtOf(bramblehook, ...draws, "--seed", "1")).stdout).toBe(stdout);
    expect((await doubtOf(bramblehook, ...draws, "--seed", "2")).stdout).not.toBe(stdout);
    expect((await doubtOf(wrenfield, "--simulate")).stdout).toMatch(/lever at takeoff +\d{5,7} /);
  });

  test("says by how much the straight-line doubt is off, and which draws went past the readings", async () => {
    // A tester of 20 us at a bend from 0.02 to 0.2 deg/us, and a landing at the last reading.
    const bent: Model = {
      ...wrenfield,
      instruments: { pulse: us(20) },
      surfaces: {
        flap: {
          servo: {
            channel: 1,
            bench: {
              up: us(1200),
              level: us(1500),
              down: us(1800),
              readings: [
                [us(1200), deg(-6)],
                [us(1490), deg(-0.2)],
                [us(1500), deg(0)],
                [us(1510), deg(2)],
                [us(1630), deg(26)],
              ],
            },
          },
        },
      },
      moves: { lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(12) }, landing: { flap: deg(26) } } },
    };
    const { exitCode, stdout } = await doubtOf(bent, "--draws", "10000");
    expect(exitCode).toBe(0);
    const flat = stdout.replaceAll(/\s+/g, " ");
    expect(flat).toMatch(
      /lever at stowed: the doubt above, worked out as if .* is \d\.\d\d deg too (wide|narrow); go by the draws\./,
    );
    expect(flat).toMatch(/lever at landing: 50 % of the draws lay past the last reading\./);
    expect(flat).toContain("No position of the plan lies there.");
  });

  test("tells what heat and cold may add where the model states its temperatures", async () => {
    const { stdout } = await doubtOf(
      {
        ...bramblehook,
        temperatures: [celsius(-10), celsius(35)],
        surfaces: {
          ...bramblehook.surfaces,
          flapLeft: {
            ...bramblehook.surfaces.flapLeft,
            servo: {
              ...bramblehook.surfaces.flapLeft.servo,
              rod: { material: "steel", along: "glass", diameter: mm(2), length: mm(120) },
            },
          } as Model["surfaces"][string],
        },
      },
      "--surface",
      "flapLeft",
    );
    expect(stdout).toMatch(/^ {2}Heat and cold may add +over +servo +servo +rod +rod +both$/m);
    expect(stdout).toMatch(/^ {2}flap at level +30 +9\.0 +0\.9 +0\.02 +0\.1 +1\.1$/m);
    expect(widest(stdout)).toBeLessThanOrEqual(80);
  });

  test("names what there is in place of a name that is not there", async () => {
    expect(await doubtOf(wrenfield, "--surface", "flaps")).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: 'hingeline: "flaps" is no surface of this plan; there is flap.\n',
    });
    expect((await doubtOf(wrenfield, "--control", "gear")).stderr).toContain("there is lever.");
  });

  test.each([
    ["--draws", "1999", "from 2000 to 10000000"],
    ["--draws", "1e4", "from 2000 to 10000000"],
    ["--seed", "1.5", "whole number"],
    ["--seed", "3", "--simulate or --draws"],
  ])("%s %s is wrong usage", async (option, value, said) => {
    const { exitCode, stdout, stderr } = await doubtOf(wrenfield, option, value);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(said);
  });

  test("says nothing of the doubt of a plan with errors, but what is wrong with it", async () => {
    const { exitCode, stdout, stderr } = await doubtOf(tooFar);
    expect([exitCode, stdout]).toEqual([1, ""]);
    expect(stderr).toContain("limit-passed");
    expect(stderr).toContain("nothing is said of its doubt");
  });

  test("says so where nothing is known in degrees", async () => {
    const { exitCode, stderr } = await doubtOf({
      ...wrenfield,
      surfaces: {
        flap: { servo: { channel: 1, bench: { up: us(1200), level: us(1500), down: us(1800) } } },
      },
      moves: { lever: { stowed: {}, takeoff: { flap: { kind: "part", part: 0.5 } }, landing: {} } },
    });
    expect([exitCode, stderr]).toEqual([
      2,
      "hingeline: No such position is known in degrees: there is none, or its bench has no readings.\n",
    ]);
  });
});
