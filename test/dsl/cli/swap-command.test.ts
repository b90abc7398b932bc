import { canonicalJson, type ServoSwap } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

const tug = JSON.stringify(bramblehook);

const swap = (readings: readonly string[], ...args: string[]) =>
  run(
    [
      "swap",
      "tug.json",
      "--servo",
      "flapLeft",
      ...readings.flatMap((reading) => ["--reading", reading]),
      ...args,
    ],
    fakeIo({ disk: new Map([[`${fixtures}tug.json`, tug]]) }),
  );

test("swap takes a reading that begins with a minus as one, and says that no pulse is below 0", async () => {
  const { exitCode, stderr } = await run(
    ["swap", "tug.json", "--servo", "flapLeft", "--reading", "1221=42", "-1838=0", "1680=14"],
    fakeIo({ disk: new Map([[`${fixtures}tug.json`, tug]]) }),
  );
  expect(exitCode).toBe(2);
  expect(stderr).not.toContain("unknown option");
});

describe("swap", () => {
  test("within the doubt: the readings to paste, and what to measure again", async () => {
    const { exitCode, stdout, stderr } = await swap(["1221=42", "1838=0", "1680=14"]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "SERVO SWAP  flapLeft, was [F-L-07]
      Map         new pulse = 5.9 us + 0.9862 x old pulse, for old pulses from 1232.2
                  to 1857.8 us
      Test        14 deg read at 1680 us, expected at 1679.4 us: misses by +0.6 us,
                  -0.05 deg; the doubt is 0.61 deg

      ACCEPTED. Put this in place of the rotation and the bench of flapLeft, with the
      pulses in place of the dots once they are measured. Change the servo's label
      too.

      type: { rotation: degPerUs(0.09248) }, // was 0.0912; the rest from its sheet
      bench: {
        up: us(...), // measure
        level: us(...), // measure
        down: us(...), // measure
        guard: us(10),
        readings: [
          [us(1837.2), deg(0.2)],
          [us(1746.5), deg(8.6)],
          [us(1642.9), deg(16.8)],
          [us(1519.6), deg(25.2)],
          [us(1381.6), deg(33.5)],
          [us(1258.3), deg(40.4)],
        ],
      },

      MEASURE AGAIN on the bench
      [ ] the stops up and down of the new servo, from inside: a map never gives a
          stop, and the old ones are not safe
      [ ] level: it lies outside the map
      [ ] the reading of -2.5 deg (old pulse 1880 us): it lies outside the map
      [ ] the reading of 44.6 deg (old pulse 1172 us): it lies outside the map
      "
    `);
  });

  test("takes several readings behind one option or behind several", async () => {
    const readings = ["1221=42", "1838=0", "1680=14"];
    const io = fakeIo({ disk: new Map([[`${fixtures}tug.json`, tug]]) });
    expect(await run(["swap", "tug.json", "--servo", "flapLeft", "--reading", ...readings], io)).toEqual(
      await swap(readings),
    );
  });

  test("past the doubt: refused with the miss, nothing to paste, exit code 1", async () => {
    const { exitCode, stdout } = await swap(["1221=42", "1838=0", "1662=14"]);
    expect(exitCode).toBe(1);
    expect(stdout).toMatchInlineSnapshot(`
      "SERVO SWAP  flapLeft, was [F-L-07]
      Map         new pulse = 5.9 us + 0.9862 x old pulse, for old pulses from 1232.2
                  to 1857.8 us
      Test        14 deg read at 1662 us, expected at 1679.4 us: misses by -17.4 us,
                  +1.34 deg; the doubt is 0.61 deg

      REFUSED: the test misses by 1.34 deg, more than the 0.61 deg of doubt: the arm
      stands on another tooth or the linkage differs. Take the whole table of
      readings; do not fly on this map.
      "
    `);
  });

  test("--format json prints the map as data, stops to measure again", async () => {
    const { stdout } = await swap(["1221=42", "1838=0", "1680=14"], "--format", "json");
    const data = JSON.parse(stdout) as ServoSwap;
    expect(stdout).toBe(`${canonicalJson(data)}\n`);
    expect(data.map.accepted).toBe(true);
    expect(data.measureAgain.stops).toEqual(["up", "down"]);
  });

  test.each([
    [["1221=42", "1838=0"], "2 readings are too few: two make the map, the third is its test."],
    [["1221=42", "1838=0", "1100=50"], "The old servo was never read at 50 deg; its readings go from"],
    [["1838=42", "1221=0", "1500=14"], "The new servo turns the other way"],
  ])("%j gives no map", async (readings, sentence) => {
    const { exitCode, stdout, stderr } = await swap(readings);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`hingeline: ${sentence}`);
  });

  test("a servo that is none, and a reading that is none, are wrong usage", async () => {
    const { stderr } = await run(
      ["swap", "-", "--servo", "flop", "--reading", "1500=0"],
      fakeIo({ stdin: tug }),
    );
    expect(stderr).toContain('There is no servo "flop"; there is ');
    expect((await swap(["1221"])).stderr).toContain("It should be two plain numbers, such as 1221=42.");
  });
});
