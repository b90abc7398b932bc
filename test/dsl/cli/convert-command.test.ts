import { compile, type Model, pct, us } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { tooFar, wrenfield } from "./wrenfield.ts";

/** Wrenfield on a radio whose limits scale, and whose centre is not half-way between them. */
const scaling: Model = {
  ...wrenfield,
  radio: { ...wrenfield.radio, centre: us(1520), step: pct(0.5), endPoints: "scale" },
};

/** `convert` of a model that lies in scaling.json. */
function convertOf(model: Model, ...args: string[]) {
  const text = JSON.stringify(model);
  const disk = new Map([[`${fixtures}scaling.json`, text]]);
  return run(["convert", "scaling.json", ...args], fakeIo({ disk }));
}

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
      The percent  right for a limit; for a position only on a radio whose limits
                   clamp
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
      The percent  right for a limit; for a position only on a radio whose limits
                   clamp
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

  test("where limits scale tells a percent for a limit alone, and how to ask for a position", async () => {
    const { exitCode, stdout, stderr } = await convertOf(scaling, "--pulse", "1735.6");
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1520 us, 100 % is 500 us from it
      Pulse        1735.6 us
      From centre  1735.6 us - 1520 us = 215.6 us
      Percent      215.6 us x 100 / 500 us = 43.12 %
      As a limit   +43 %, the nearest in steps of 0.5 %
      Gives        1520 us + 43 x 500 us / 100
                   = 1520 us + 215 us = 1735 us
      Off by       1735 us - 1735.6 us = -0.6 us
      As position  not this percent: limits scale on this radio, so a position is
                   entered as a share of the way between the two limits of its
                   channel; give --channel to have it
      "
    `);
  });

  // Half-way between 1210 and 1790 us is 1500 us; 23560 / 290 = 81.241379 and 81 x 290 / 100 = 234.9, by hand.
  test("on a channel whose limits scale writes out the share of the way between them", async () => {
    const { exitCode, stdout, stderr } = await convertOf(scaling, "--pulse", "1735.6", "--channel", "1");
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "Scale        0 % is 1520 us, 100 % is 500 us from it
      Limits       -62 % is 1210 us and +54 % is 1790 us, of channel 1 (flap)
      Middle       (1210 us + 1790 us) / 2 = 1500 us
      Pulse        1735.6 us
      From middle  1735.6 us - 1500 us = 235.6 us
      Share        235.6 us x 100 / 290 us = about 81.241379 share
      Enter        +81 share, the nearest in steps of 0.5
      Gives        1500 us + 81 x 290 us / 100
                   = 1500 us + 234.9 us = 1734.9 us
      Off by       1734.9 us - 1735.6 us = -0.7 us
      "
    `);
  });

  test("on a channel says what the plan has, whether limits scale or clamp", async () => {
    for (const model of [scaling, wrenfield]) {
      const { channels, radio } = compile(model);
      for (const { exact, enter } of channels.flatMap(({ settings }) => settings)) {
        const typed = radio.endPoints === "scale" ? enter.sharePercent : enter.percent;
        const pulse = await convertOf(model, "--pulse", String(exact.pulseUs), "--channel", "1");
        expect(pulse.stdout).toMatch(
          new RegExp(`^Enter +[+]?${typed} (%|share), the nearest in steps of `, "m"),
        );
        const back = await convertOf(model, "--percent", String(typed), "--channel", "1");
        expect(back.stdout).toMatch(new RegExp(`^Pulse .* = ${enter.pulseUs} us$`, "m"));
      }
    }
  });

  test("past the limits of a channel is not clamped: it says so and exits with 1", async () => {
    for (const [model, unit] of [
      [scaling, "share"],
      [wrenfield, "%"],
    ] as const) {
      const { exitCode, stdout } = await convertOf(model, "--pulse", "1795", "--channel", "1");
      expect(exitCode).toBe(1);
      expect(stdout).toMatch(
        new RegExp(
          `^Enter +not possible: [\\d.]+ ${unit} is past the limits of channel 1\\s+\\(flap\\)$`,
          "m",
        ),
      );
      const edge = await convertOf(model, "--pulse", "1790", "--channel", "1");
      expect(edge.exitCode).toBe(0);
    }
  });

  test("on a channel of a plan with errors, or on none of the plan's, is refused", async () => {
    const wrong = await convertOf(tooFar, "--pulse", "1500", "--channel", "1");
    expect([wrong.exitCode, wrong.stdout]).toEqual([1, ""]);
    expect(wrong.stderr).toContain("must not be entered, so nothing is converted by its limits.\n");
    expect(await convertOf(scaling, "--pulse", "1500", "--channel", "7")).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: The plan has no channel 7; its channels are 1.\n",
    });
  });

  test.each([
    [["convert", "--pulse", "1500", "--channel", "1", ...scale], "Give a model with --channel."],
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
      `hingeline: option '--per100 <us>' argument '${span}' is invalid. It should be above 0. See hingeline convert --help.\n`,
    ]);
  });
});
