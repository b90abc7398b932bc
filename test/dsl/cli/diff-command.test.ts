import { canonicalJson, compile, deg, type Model, type PlanChange, us } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import { describe, expect, test } from "vitest";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { wrenfield } from "./wrenfield.ts";

const tug = bramblehook as Model;

/** The tow plane with less flap for landing, another servo on the left, and a nearer stop of the elevator. */
const changed = {
  ...tug,
  moves: {
    ...tug.moves,
    flap: {
      ...(tug.moves.flap as Record<string, object>),
      landing: { flaps: deg(40), elevator: deg(2) },
    },
  },
  surfaces: withServo(
    withServo(tug.surfaces, "flapLeft", (servo) => ({ ...servo, label: "F-L-11" })),
    "elevator",
    (servo) => ({ ...servo, bench: { ...servo.bench, down: us(1830) } }),
  ),
} as Model;

const disk = () =>
  new Map([
    [`${fixtures}old.json`, canonicalJson(compile(tug))],
    [`${fixtures}tug.json`, JSON.stringify(tug)],
    [`${fixtures}new.json`, JSON.stringify(changed)],
  ]);

const diff = (...args: string[]) => run(["diff", ...args], fakeIo({ disk: disk() }));

describe("diff", () => {
  test("of a committed plan and its own model finds nothing, --exit-code or not", async () => {
    for (const options of [[], ["--exit-code"]]) {
      const { exitCode, stdout, stderr } = await diff("old.json", "tug.json", ...options);
      expect([exitCode, stderr]).toEqual([0, ""]);
      expect(stdout).toMatch(/\n\nNothing differs\.\n$/);
    }
  });

  test("tells each change in a line or two, then what to verify again", async () => {
    const { exitCode, stdout, stderr } = await diff("old.json", "new.json");
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout.replaceAll(/revision [0-9a-f]{8}/g, "revision X")).toMatchInlineSnapshot(`
      "BEFORE  old.json, revision X
      AFTER   new.json, revision X

      CHANNEL 2   elevator
        safe: 1190.0 to 1840.0 -> 1190.0 to 1820.0 us
        high limit: ENTER +68 -> +64 %; 1840.0 -> 1820.0 us

      CHANNEL 5   flapLeft
        label of flapLeft: "F-L-07" -> "F-L-11": another servo's positions hold only
        after the three-point check (hingeline swap)
        flap at landing: ENTER -54 -> -45 %; 1230.0 -> 1275.0 us; wanted 42 -> 40 deg;
        throw 69.5 -> 66.4 mm; gives 42.10 -> 39.92 deg

      CHANNEL 6   flapRight
        flap at landing: ENTER +57 -> +48 %; 1785.0 -> 1740.0 us; wanted 42 -> 40 deg;
        throw 69.5 -> 66.4 mm; gives 42.12 -> 39.92 deg

      NEW FINDINGS

      WARNING  surfaces.elevator.servo.bench.readings[4] (reading-past-stop)
        A reading was taken at 1850 us, past the stop down at 1830 us.
        -> Check the stop: it is the last pulse at which all was well.

      Finding gone  surfaces.flapLeft.servo (adds-past-reach)
      Finding gone  surfaces.flapRight.servo (adds-past-reach)

      Finding with other numbers  groups.flaps (match-unproven)
      Finding with other numbers  surfaces.flapLeft.servo (half-the-pulses)
      Finding with other numbers  surfaces.flapRight.servo (half-the-pulses)

      Computed anew  value at rest of channel 2; settings of channel 2; failsafe of
                     channel 2; extremes of channels 5, 6; transits of channels 5, 6;
                     load of channels 5, 6; matches; procedure

      VERIFY AGAIN
      [ ] channel 2: limits
      [ ] channel 5: everything
      [ ] channel 6: flap at landing
      [ ] left against right: flaps
      "
    `);
  });

  test("exits with 1 for a difference where --exit-code asks for it", async () => {
    expect((await diff("old.json", "new.json", "--exit-code")).exitCode).toBe(1);
  });

  test("--format json prints the changes as data", async () => {
    const { stdout } = await diff("old.json", "new.json", "--format", "json");
    const data = JSON.parse(stdout) as { changes: PlanChange[]; verify: { groups: string[] } };
    expect(stdout).toBe(`${canonicalJson(data)}\n`);
    expect(data.changes).toContainEqual({
      kind: "label",
      channel: 5,
      servo: "flapLeft",
      before: "F-L-07",
      after: "F-L-11",
    });
    expect(data.verify.groups).toEqual(["flaps"]);
  });

  test("--procedure adds the steps from the one to the other", async () => {
    const { stdout } = await diff("tug.json", "new.json", "--procedure");
    expect(stdout).toMatch(/\nPROCEDURE\n\nRECEIVER SUPPLY OFF, LINKAGES OFF\n\n\[ \] +1\. /);
    expect((await diff("wrenfield.ts", "too-far.ts", "--procedure")).stdout).toContain(
      "There is no order of entry: the plan after the change has errors.",
    );
  });

  test("takes one of the two from standard input, a plan or a model", async () => {
    for (const stdin of [canonicalJson(compile(wrenfield)), JSON.stringify(wrenfield)])
      expect((await run(["diff", "wrenfield.ts", "-"], fakeIo({ stdin }))).stdout).toContain(
        "Nothing differs.",
      );
  });

  test("of two radios says what a percent is worth on either", async () => {
    const other = { ...wrenfield, radio: { ...wrenfield.radio, name: "field set", per100: us(400) } };
    const { stdout } = await run(["diff", "wrenfield.ts", "-"], fakeIo({ stdin: JSON.stringify(other) }));
    expect(stdout).toContain(
      "Radio  desk set -> field set; 100 % is 500 -> 400 us. Percents do not carry\n       over: +40 % was 1700.0 us and is 1660.0 us; carry the pulses\n",
    );
    expect(stdout).toContain("[ ] channel 1: everything\n");
  });

  test.each([
    [["-", "-"], "Only one of the two can come from standard input."],
    [["gone.ts", "tug.json"], "gone.ts does not exist."],
    [["tug.json", "list.json"], "list.json is no model: it does not say"],
  ])("%j cannot be compared", async (args, sentence) => {
    const { exitCode, stdout, stderr } = await diff(...args);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`hingeline: ${sentence}`);
  });

  test("a malformed model is told with its findings", async () => {
    expect(await diff("misspelt.json", "tug.json")).toMatchObject({ exitCode: 1, stdout: "" });
  });
});

type Servos = Model["surfaces"];
type OneServo = NonNullable<Servos[string]["servo"]>;

function withServo(surfaces: Servos, name: string, change: (servo: OneServo) => OneServo): Servos {
  const surface = surfaces[name];
  if (surface?.servo === undefined) throw new Error(`no servo of ${name}`);
  return { ...surfaces, [name]: { ...surface, servo: change(surface.servo) } };
}
