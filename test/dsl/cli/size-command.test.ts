import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { fakeIo } from "./fake-io.ts";
import { run } from "./run.ts";

const place = ["--base", "88", "--rise", "-16"];
const servo = ["--rotation", "0.09", "--travel", "60"];
const holes = ["--arm-holes", "8,10,12", "--horn-holes", "15,17,20", "--teeth", "24"];
const throws = ["--up", "2", "--down", "42"];
const flap = ["size", ...place, ...throws, ...holes, ...servo];

interface Sized {
  readonly tried: number;
  readonly fitting: number;
  readonly rejected: Readonly<Record<string, number>>;
  readonly proposals: readonly Readonly<Record<string, number>>[];
}

const sized = async (args: readonly string[]): Promise<Sized> =>
  JSON.parse((await run([...args, "--format", "json"])).stdout);

describe("size", () => {
  test("ranks what does the job, says why, and what is left out for which reason", async () => {
    const { exitCode, stdout, stderr } = await run([...flap, "--most", "4"]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Wanted     2 deg up and 42 deg down
      Hinge      88 mm aft of the shaft, 16 mm below it
      Servo      turns 60 deg to either side of its middle, 0.09 deg a microsecond
      Tried      432 combinations, of which 23 would do; the best 4 shown
      Left out   each for the first thing wrong: 294 never reach a wanted deflection;
                 115 need more servo travel than there is

                      ARM    at  HORN   at   rod   up  down  torque  ranks  angle
                       mm   deg    mm  deg    mm  deg   deg       x      x    deg
        1              12   105    17   90  91.7    3    60    1.39   0.94     53
        2              10  -105    15   90  91.0    3    60    1.36   0.93     46
        3              12   120    17   90  94.5    4    60    1.27   0.86     51
        4              12    30    15  -90  86.0    3    53    1.25   0.85     52

      Order      by what it ranks at, the most first
      at         from aft (0) through up (90): the arm with the servo at its middle,
                 the horn with the surface level
      rod        pin to pin, what fits at level
      up, down   what the servo turns from level to the wanted deflections
      torque     at the surface for one at the servo, where it is least
      ranks      torque / (1 + 0.5 u), u being 0 where the servo turns as much up as
                 down and 1 where all is on one side
      angle      least between the rod and arm or horn, on all of the way

      Declare    the first as pushrod({ arm: mm(12), horn: mm(17), base: mm(88), rise:
                 mm(-16), armAt: deg(105), hornAt: deg(90) })
      Fineness   one microsecond moves its surface by 0.065 deg at most

      - An estimate of geometry alone, in one plane: it knows no flex, no play, no
        widths, and nothing that is in the way.
      - The more torque, the slower the surface, and the larger the forces in rod and
        horn.
      - Measure what was built with a servo tester before a plan is made for it.
      "
    `);
  });

  // The rod keeps its length: arm tip and horn ball placed by their angles alone, positive clockwise as seen from the port tip.
  test("proposes rods that are as long at both wanted deflections as at level", async () => {
    const { proposals } = await sized(flap);
    expect(proposals.length).toBe(10);
    for (const { armMm = 0, armAtDeg = 0, hornMm = 0, hornAtDeg = 0, rodMm, ...turns } of proposals) {
      const { rotationUpDeg = 0, rotationDownDeg = 0 } = turns;
      for (const [rotationDeg, deflectionDeg] of [
        [0, 0],
        [rotationUpDeg, -2],
        [rotationDownDeg, 42],
      ] as const) {
        const [armAft, armUp] = tip(armMm, armAtDeg - rotationDeg);
        const [hornAft, hornUp] = tip(hornMm, hornAtDeg - deflectionDeg);
        expect(Math.hypot(88 + hornAft - armAft, -16 + hornUp - armUp)).toBeCloseTo(rodMm ?? 0, 9);
        expect(Math.abs(rotationDeg)).toBeLessThanOrEqual(60);
      }
    }
  });

  test("tries every combination of holes and angles, and counts each once", async () => {
    const args = [...flap, "--horn-at", "-90,-60,-33", "--level", "-20,0,20"];
    const { tried, fitting, rejected } = await sized(args);
    expect(tried).toBe(3 * 24 * 3 * 3 * 3);
    expect(fitting + Object.values(rejected).reduce((sum, count) => sum + count, 0)).toBe(tried);
  });

  test("takes the angles of an arm without teeth as they are", async () => {
    const args = ["size", ...place, ...throws, ...servo, "--arm-holes", "12", "--horn-holes", "17"];
    const { tried, proposals } = await sized([...args, "--arm-at", "105,120", "--horn-at", "90"]);
    expect(tried).toBe(2);
    expect(proposals.map(({ armAtDeg }) => armAtDeg)).toEqual([105, 120]);
  });

  test("with --even 0 ranks by torque alone, and says so", async () => {
    const { stdout } = await run([...flap, "--even", "0"]);
    expect(stdout).toContain("Order      most torque first\n");
    expect(stdout).not.toContain("ranks");
  });

  test("says that nothing fits, why, and exits with 1", async () => {
    const { exitCode, stdout, stderr } = await run([...flap, "--down", "170"]);
    expect([exitCode, stderr]).toEqual([1, ""]);
    expect(stdout).toContain("432 never reach a wanted deflection\n\nNothing does what is wanted.");
    expect((await run([...flap, "--down", "170", "--format", "json"])).exitCode).toBe(1);
  });

  test.each([
    [["size", ...throws, ...holes, "--travel", "60"], "Give --base, --rise, --rotation."],
    [[...flap, "--up", "0", "--down", "0"], "Give the deflection to reach: --up, --down or both, above 0."],
    [
      ["size", ...place, ...throws, ...servo, "--arm-holes", "8", "--horn-holes", "15"],
      "Give --teeth, or with --arm-at the angles that the arm can take.",
    ],
    [[...flap, "--arm-at", "0,5"], "With --teeth give --arm-at one angle only."],
    [[...flap, "--least-angle", "90"], "The least angle should be below 90 deg."],
    [
      [...flap, "--teeth", "9999"],
      "That makes 179982 combinations, and 100000 are the most that are tried; give fewer holes or angles.",
    ],
    [[...flap, "--servo", "flapLeft"], "Give a model and --servo together."],
    [
      [...flap, "--armholes", "8"],
      "unknown option '--armholes' (Did you mean --arm-holes?) See hingeline size --help.",
    ],
    [
      [...flap, "--arm-holes", "8,,12"],
      "option '--arm-holes <mm,...>' argument '8,,12' is invalid. It should be a plain number, such as 72.7. See hingeline size --help.",
    ],
    [
      [...flap, "--teeth", "2.5"],
      "option '--teeth <number>' argument '2.5' is invalid. It should be a whole number. See hingeline size --help.",
    ],
    [
      [...flap, "--down", "-42"],
      "option '--down <deg>' argument '-42' is invalid. It should be from 0 to 180. See hingeline size --help.",
    ],
    [
      ["size", ...place, ...throws, "--horn-holes", "15", ...servo],
      "required option '--arm-holes <mm,...>' not specified. See hingeline size --help.",
    ],
  ])("%j is wrong usage", async (args, sentence) => {
    expect(await run(args)).toEqual({ exitCode: 2, stdout: "", stderr: `hingeline: ${sentence}\n` });
  });
});

describe("size of a model's servo", () => {
  const io = () => fakeIo({ stdin: JSON.stringify(bramblehook) });
  const args = ["size", "-", "--servo", "aileronLeft", ...holes, "--travel", "60"];

  test("takes from the model where the hinge lies, what the servo turns, and what the moves ask", async () => {
    const { exitCode, stdout, stderr } = await run(args, io());
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout.split("\n").slice(0, 4)).toMatchInlineSnapshot(`
      [
        "Wanted     20 deg up and 14 deg down",
        "Hinge      70 mm aft of the shaft, 5 mm below it",
        "Servo      turns 60 deg to either side of its middle, 0.0905 deg a microsecond",
        "Tried      432 combinations, of which 127 would do; the best 10 shown",
      ]
    `);
  });

  test("goes by an option where one is given", async () => {
    const { stdout } = await run([...args, "--up", "0", "--down", "12.5", "--base", "70"], io());
    expect(stdout).toContain("Wanted     0 deg up and 12.5 deg down\nHinge      70 mm aft of the shaft");
  });

  test.each([
    [["size", "gone.ts", "--servo", "flapLeft", ...holes, "--travel", "60"], "gone.ts does not exist."],
    [["size", "wrenfield.json", ...holes, "--travel", "60"], "Give a model and --servo together."],
    [
      ["size", "wrenfield.json", "--servo", "flop", ...holes, "--travel", "60"],
      'The model has no servo "flop"; its servos are flap.',
    ],
    [
      ["size", "wrenfield.json", "--servo", "flap", ...holes, "--travel", "60"],
      "Give --base, --rise, --rotation.",
    ],
  ])("%j is wrong usage", async (wrong, sentence) => {
    expect(await run(wrong)).toEqual({ exitCode: 2, stdout: "", stderr: `hingeline: ${sentence}\n` });
  });
});

function tip(lengthMm: number, atDeg: number): readonly [aftMm: number, upMm: number] {
  const atRad = (atDeg * Math.PI) / 180;
  return [lengthMm * Math.cos(atRad), lengthMm * Math.sin(atRad)];
}
