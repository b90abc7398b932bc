import { describe, expect, test } from "vitest";
import { run } from "./run.ts";

const scale = ["--centre", "1500", "--per100", "512", "--step", "0.1"];

describe("convert", () => {
  // 372 x 100 / 512 = 72.65625 and 72.7 x 512 / 100 = 372.224, by hand.
  test("writes out a pulse to percent", async () => {
    const { exitCode, stdout, stderr } = await run(["convert", "--pulse", "1872", ...scale]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1500 us, 100 % is 512 us from it
      Pulse        1872 us
      From centre  1872 us - 1500 us = 372 us
      Percent      372 us x 100 / 512 us = 72.65625 %
      Enter        +72.7 %, the nearest in steps of 0.1 %
      Gives        1500 us + 72.7 x 512 us / 100
                   = 1500 us + 372.224 us = 1872.224 us
      Off by       1872.224 us - 1872 us = 0.224 us
      "
    `);
  });

  // -45.27 x 512 / 100 = -231.7824, by hand.
  test("writes out a negative percent to its pulse", async () => {
    const { exitCode, stdout, stderr } = await run(["convert", "--percent", "-45.27", ...scale]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1500 us, 100 % is 512 us from it
      Percent      -45.27 %
      From centre  (-45.27) x 512 us / 100 = -231.7824 us
      Pulse        1500 us + (-231.7824) us = 1268.2176 us
      Enter        -45.3 %, the nearest in steps of 0.1 %
      Gives        1500 us + (-45.3) x 512 us / 100
                   = 1500 us + (-231.936) us = 1268.064 us
      Off by       1268.064 us - 1268.2176 us = -0.1536 us
      "
    `);
  });

  test("takes the scale from a model", async () => {
    const { exitCode, stdout } = await run(["convert", "wrenfield.ts", "--pulse", "1233.3"]);
    expect(exitCode).toBe(0);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1500 us, 100 % is 500 us from it
      Pulse        1233.3 us
      From centre  1233.3 us - 1500 us = -266.7 us
      Percent      (-266.7) us x 100 / 500 us = -53.34 %
      Enter        -53 %, the nearest in steps of 1 %
      Gives        1500 us + (-53) x 500 us / 100
                   = 1500 us + (-265) us = 1235 us
      Off by       1235 us - 1233.3 us = 1.7 us
      "
    `);
  });

  test("says where decimals go on", async () => {
    const { stdout } = await run([
      "convert",
      "--pulse",
      "1600",
      "--centre",
      "1500",
      "--per100",
      "300",
      "--step",
      "1",
    ]);
    expect(stdout).toContain("100 us x 100 / 300 us = about 33.333333 %");
  });

  test("of a percent past the reach is not clamped: it says so and exits with 1", async () => {
    const { exitCode, stdout } = await run(["convert", "wrenfield.ts", "--percent", "101"]);
    expect(exitCode).toBe(1);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1500 us, 100 % is 500 us from it
      Percent      101 %
      From centre  101 x 500 us / 100 = 505 us
      Pulse        1500 us + 505 us = 2005 us
      Enter        not possible: 101 % is past the 100 % that this radio reaches
      "
    `);
  });

  test.each([
    [["convert", "wrenfield.ts"], "Give either --pulse or --percent."],
    [["convert", "wrenfield.ts", "--pulse", "1500", "--percent", "0"], "Give either --pulse or --percent."],
    [["convert", "--pulse", "1500"], "Give a model, or --centre, --per100 and --step."],
    [
      ["convert", "wrenfield.ts", "--pulse", "1500", "--step", "1"],
      "Give either a model or --centre, --per100, --step and --reach, not both.",
    ],
    [["convert", "gone.ts", "--pulse", "1500"], "gone.ts does not exist."],
    [["convert", "--pulse", "1500", ...scale, "--reach", "0.01"], "The step is larger than the reach."],
  ])("%j is wrong usage", async (args, sentence) => {
    expect(await run(args)).toEqual({ exitCode: 2, stdout: "", stderr: `hingeline: ${sentence}\n` });
  });

  test.each(["0", "-512"])("a span of %s us is wrong usage", async (span) => {
    const { exitCode, stderr } = await run([
      "convert",
      "--pulse",
      "1500",
      "--centre",
      "1500",
      "--per100",
      span,
      "--step",
      "1",
    ]);
    expect([exitCode, stderr]).toEqual([
      2,
      `hingeline: option '--per100 <us>' argument '${span}' is invalid. It should be above 0. See hingeline --help.\n`,
    ]);
  });
});
