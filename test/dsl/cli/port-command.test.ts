import { canonicalJson, compile, type Model, type Port, pct, us } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { wrenfield } from "./wrenfield.ts";

const fieldSet = { ...wrenfield.radio, name: "field set", centre: us(1520), per100: us(400) };
const other: Model = { ...wrenfield, name: "Another", radio: fieldSet };

const port = (radio: object, ...args: string[]) =>
  run(
    ["port", "wrenfield.ts", "radio.json", ...args],
    fakeIo({ disk: new Map([[`${fixtures}radio.json`, JSON.stringify(radio)]]) }),
  );

describe("port", () => {
  // On 5 us per percent about 1500 us and on 4 us about 1520 us: 12 % is 1560 us here, 10 % there.
  test("prints old and new side by side, and where a retyped percent would put the surface", async () => {
    const { exitCode, stdout, stderr } = await port(fieldSet);
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatchInlineSnapshot(`
      "PORT   Wrenfield 20
      Radio  desk set -> field set; centre 1500 -> 1520 us; 100 % is 500 -> 400 us.
             Percents do not carry over: +40 % was 1700.0 us and is 1680.0 us; carry
             the pulses

      CHANNEL 1   flap
        Position          was  ENTER     was     now    was    now  retyped
                            %      %      us      us    deg    deg      deg
        low limit         -58    -77  1210.0  1212.0      -      -    -21.2
        high limit        +58    +67  1790.0  1788.0      -      -    +25.2
        at rest             0     -5  1500.0  1500.0      -      -     +2.0
        lever at stowed     0     -5  1500.0  1500.0    0.0    0.0     +2.0
        lever at takeoff  +24    +25  1620.0  1620.0  +12.0  +12.0    +11.6
        lever at landing  +50    +57  1750.0  1748.0  +25.0  +24.8    +22.0
        failsafe          +24    +25  1620.0  1620.0      -      -    +11.6
        retyped: where the old percent, typed into this radio, would put the surface.
      "
    `);
  });

  test("takes the radio of another model, and its JSON is the plan of the model with that radio", async () => {
    const text = await port(other, "--format", "json");
    const data = JSON.parse(text.stdout) as Pick<Port, "plan" | "unreachable">;
    expect(canonicalJson(data.plan)).toBe(canonicalJson(compile({ ...wrenfield, radio: fieldSet })));
    expect(data.unreachable).toEqual([]);
    expect((await port(fieldSet, "--format", "json")).stdout).toBe(text.stdout);
  });

  test("names what is out of reach and what would help, and exits with 1", async () => {
    const { exitCode, stdout } = await port({ ...fieldSet, reach: pct(20) });
    expect(exitCode).toBe(1);
    expect(stdout).toContain("DO NOT ENTER THIS: the plan on this radio has errors.");
    expect(stdout).toContain(`
OUT OF REACH
- channel 1, lever at stowed: needs 1500.0 us, which could be sent, but the
  channel is lost with the others
- channel 1, lever at takeoff: needs 1620.0 us; this radio ends at 1600.0 us
- channel 1, lever at landing: needs 1750.0 us; this radio ends at 1600.0 us

ANY ONE OF THESE WOULD HELP
- channel 1: a radio that reaches 58.0 %
`);
  });

  test("a radio that is none is told with its findings", async () => {
    const { exitCode, stdout, stderr } = await port({ ...fieldSet, step: "fine" });
    expect([exitCode, stdout]).toEqual([1, ""]);
    expect(stderr).toContain("radio.step");
  });

  test("both from standard input is wrong usage", async () => {
    expect(await run(["port", "-", "-"])).toEqual({
      exitCode: 2,
      stdout: "",
      stderr: "hingeline: Only one of the two can come from standard input.\n",
    });
  });
});
