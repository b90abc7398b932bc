import type { Radio } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

const radio = (...args: string[]) => run(["radio", ...stated, ...args]);
/** What no reading shows. */
const stated = ["--step", "1", "--end-points", "scale"];
const reading = (...pairs: string[]) => pairs.flatMap((pair) => ["--reading", pair]);
const three = reading("-100=988", "0=1500", "100=2012");

describe("radio", () => {
  // 512 us per 100 % about 1500 us, by hand.
  test("prints the residuals and the radio as it stands in a model file", async () => {
    const { exitCode, stdout, stderr } = await radio(...three);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "  Reading         read  off by  used
                          us      us
        -100 %         988.0     0.0   yes
        0 %           1500.0     0.0   yes
        +100 %        2012.0     0.0   yes

      radio: {
        name: "measured set",
        centre: us(1500), // within 1.2 us (k = 2)
        per100: us(512), // within 0.8 us (k = 2)
        reach: pct(100),
        step: pct(1), // stated
        endPoints: "scale", // stated
        curvePoints: 0, // no curve is used
      },
      "
    `);
  });

  test("its JSON is a radio that port takes", async () => {
    const { stdout } = await radio(
      ...three,
      "--format",
      "json",
      "--name",
      "field set",
      "--step",
      "0.1",
      "--curve-points",
      "9",
    );
    const described = JSON.parse(stdout) as Radio;
    expect(described).toEqual({
      name: "field set",
      centre: 1500,
      per100: 512,
      reach: 100,
      step: 0.1,
      endPoints: "scale",
      curvePoints: 9,
    });
    const disk = new Map([[`${fixtures}field.json`, stdout]]);
    expect((await run(["port", "wrenfield.ts", "field.json"], fakeIo({ disk }))).exitCode).toBe(0);
  });

  test("a clamp ends the reach and is told", async () => {
    const rows = ["-125=1003", "-100=1003", "-50=1251.5", "0=1500", "50=1748.5", "100=1997", "125=2121.25"];
    const { exitCode, stdout } = await radio(...reading(...rows));
    expect(exitCode).toBe(0);
    expect(stdout).toContain(
      "WARNING: from -125.0 to -100.0 % the pulse stays at 1003.0 us, a clamp: it is\nmet at -100.0 %, and the reach ends there.\n",
    );
    expect(stdout).toContain("  reach: pct(100),\n");
  });

  test("readings that no scale goes through are told, and exit with 1", async () => {
    const { exitCode, stdout } = await radio(
      ...reading("-100=1000", "-50=1260", "0=1500", "50=1700", "100=2000"),
    );
    expect(exitCode).toBe(1);
    expect(stdout).toContain("WARNING: no scale goes through these readings: the worst is ");
  });

  test("takes readings in any order behind one --reading, below 0 too", async () => {
    const expected = await radio(...three);
    for (const order of [
      ["100=2012", "0=1500", "-100=988"],
      ["-100=988", "0=1500", "100=2012"],
      ["0=1500", "-100=988", "100=2012"],
    ]) {
      const { exitCode, stdout } = await radio("--reading", ...order);
      expect(exitCode).toBe(0);
      expect(stdout.split("\n\n").at(1)).toBe(expected.stdout.split("\n\n").at(1));
    }
    const { stderr } = await radio("--reading", "100=2012", "-100=988", "level");
    expect(stderr).toContain("'level' is invalid. It should be two plain numbers");
  });

  test("takes a file of readings, with a head line or without", async () => {
    const expected = (await radio(...three)).stdout;
    for (const text of [
      "percent,pulse\n-100,988\n0,1500\n100,2012\n",
      "-100;988\r\n0;1500\r\n100;2012",
      "# a tester's remark\n-100;988,0\n0;1500,0\n100;2012,0\n",
      "pulse (us)\tpercent\n988\t-100\n1500\t0\n2012\t100\n",
    ]) {
      const disk = new Map([[`${fixtures}read.csv`, text]]);
      expect((await run(["radio", ...stated, "--csv", "read.csv"], fakeIo({ disk }))).stdout).toBe(expected);
    }
  });

  test("guesses neither the step nor what limits do: it asks for them, with how to find out", async () => {
    const step = await run(["radio", ...three, "--end-points", "clamp"]);
    expect([step.exitCode, step.stdout]).toEqual([2, ""]);
    expect(step.stderr).toMatch(/^hingeline: Give --step, /);
    const endPoints = await run(["radio", ...three, "--step", "1"]);
    expect([endPoints.exitCode, endPoints.stdout]).toEqual([2, ""]);
    expect(endPoints.stderr).toMatch(/^hingeline: Give --end-points clamp or scale: read a pulse /);
    expect((await radio(...three, "--end-points", "clamp")).stdout).toContain(
      'endPoints: "clamp", // stated',
    );
  });

  test.each([
    ["-100,988\n0,level\n", "line 2 is not a percent and a pulse"],
    ["-100,988,1\n", "line 1: there are 3 values for 2 columns"],
    ["# nothing", "it holds no readings"],
    ["percent,width\n0,1500", 'line 1: the column "width" is none of percent, pulse'],
  ])("says what in a file is no reading: %j", async (text, problem) => {
    const disk = new Map([[`${fixtures}read.csv`, text]]);
    expect(await run(["radio", ...stated, "--csv", "read.csv"], fakeIo({ disk }))).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: `hingeline: read.csv: ${problem}.\n`,
    });
  });

  test.each([
    [reading("0=1500"), "1 reading is too few: 3 are needed"],
    [reading("0=1500", "0=1501", "0=1502"), "The readings are at 1 percent; 3 are needed."],
    [reading("0=1500", "100=2012"), "2 readings are too few: 3 are needed"],
    [reading("-100=2012", "0=1500", "100=988"), "The pulse does not rise with the percent"],
    [reading("0=1500mm"), "It should be two plain numbers, such as -100=988."],
    [[...three, "--step", "150"], "The radio's reach would be 0; it has to be above 0."],
  ])("%j gives no radio", async (args, sentence) => {
    const { exitCode, stdout, stderr } = await radio(...args);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(sentence);
  });
});
