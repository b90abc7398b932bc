import { stripVTControlCharacters } from "node:util";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { displayWidth } from "../../../packages/dsl/src/render/display-width.ts";
import { planToText } from "../../../packages/dsl/src/render/plan-to-text.ts";
import { fullPlan, sampleChannel, sampleFinding, samplePlan } from "../../support/sample-plan.ts";

const linesOf = (text: string) => text.split("\n");

describe("planToText", () => {
  test("of the least plan, whole", () => {
    expect(planToText(samplePlan())).toMatchInlineSnapshot(`
      "SETUP PLAN   Heronswood tug

      Radio      field set: centre 1500 us, 512 us per 100 %, steps of 0.1 % up to
                 125 %; limits cut the output; no curve
      Controls   lever: stowed (at rest), landing
      Holds      1 channel; no errors, no warnings, no notes
      Signs      deflections are positive trailing edge down, a rudder's trailing edge
                 to port
      Columns    ENTER is the channel's value with every other control at rest. adds
                 is what a position adds to the channel's value at rest, for a
                 transmitter that sums.

      --------------------------------------------------------------------------------
      CHANNEL 5   flap

      Sense      the pulse falls as the deflection grows
      Safe       1208.0 to 1890.0 us; 4.0 and 6.5 us are kept clear of the stops,
                 1204.0 us and 1896.5 us

        Channel       ENTER   pulse
                          %      us
        low limit     -57.0  1208.2
        high limit    +76.1  1889.6
        at rest       +72.7  1872.2
        failsafe      +72.7  1872.2

        Position           exact  ENTER    adds
                              us      %       %
        lever at stowed   1872.0  +72.7     0.0
        lever at landing  1268.2  -45.2  -117.9

      Lowest     1268.2 us (-45.27 %), 60.2 us to spare as entered: lever at landing
      Highest    1872.0 us (+72.66 %), 17.8 us to spare as entered: every control at
                 rest

      --------------------------------------------------------------------------------
      CAUTIONS

      - The pilot decides.
      "
    `);
  });

  test("of a plan with every part and an error, whole", () => {
    expect(planToText(fullPlan)).toMatchInlineSnapshot(`
      "DO NOT ENTER THIS PLAN: it has 1 error.

      ERROR  moves.flap.landing.flapLeft (limit-passed)
        flapLeft needs 1200 us, 8 us past the safe 1208 us (stop down 1204 us, guard
        4 us).
        -> Do not connect the linkage with this. 37.8 deg is the furthest that is
           safe.

      SETUP PLAN   Heronswood tug

      Radio      field set: centre 1500 us, 500 us below and 512.5 us above the centre
                 per 100 %, steps of 0.1 % up to 125 %; limits scale the output; a
                 curve of 3 points
      Controls   flap: stowed (at rest), landing; phase: cruise (at rest), thermal;
                 roll: stick, trim 10 %
      Holds      1 channel; 1 error, 1 warning, 1 note
      Signs      deflections are positive trailing edge down, a rudder's trailing edge
                 to port
      Columns    ENTER is the percent of a limit, and of a position its share between
                 the channel's low limit (-100) and its high limit (+100), every other
                 control at rest. A percent beside a pulse is of the signal scale.
                 adds is what a position adds to the channel's value at rest, for a
                 transmitter that sums. curve is for one whose curve is entered too:
                 then it takes the place of ENTER, and sums of it are sums of degrees.

      --------------------------------------------------------------------------------
      CHANNEL 7   flapLeft [F-L-07] and rudder.upper
      Do not enter: this plan has errors.

      Sense      the pulse rises as the deflection grows
      Safe       1208.0 to 1890.0 us; 4.0 and 6.5 us are kept clear of the stops,
                 1204.0 us and 1896.5 us

        Channel             ENTER   pulse
                                       us
        low limit     -57.0 %      1208.2
        high limit    +76.1 %      1889.6
        at rest       +94.9 share  1872.2
        failsafe      +94.9 share  1872.2

        Position     wanted  throw   exact  ENTER  gives  off by  doubt    adds  curve
                        deg     mm      us  share    deg     deg    deg   share      %
        flapLeft: flap at landing
                     +38.25  +40.4  1268.2  -82.3  +38.2     0.0    0.4  -117.9  +92.1
        rudder: roll at -1, phase at thermal
                          -      -  1700.0  +44.4      -       -      -   +39.1      -

      Lowest     1200.0 us (-58.59 %), 8.0 us PAST the safe end: flap at landing,
                 phase at thermal, roll at +1.1 (trim added)
      Highest    1880.1 us (+74.24 %), 9.9 us to spare as entered: flap at stowed,
                 phase at cruise, roll at -0.25
      Power-up   1500.0 us (0.00 %), +27.1 deg, until the receiver hears the
                 transmitter
      Doubt      flap at landing is the least sure, within 0.41 deg (k = 2); it comes
                 from reading 77 %, free play (assumed) 23 %
      Summed     added up in percent it would be +6.20 deg in place of +4.00 deg
                 (+2.20 deg off): flap at landing, phase at thermal
      Transit    flap from stowed to landing in 2.50 s (from -100 to +100 %: 4.21 s);
                 the servo alone needs 0.13 s
      Transit    phase from cruise to thermal in 1.00 s (from -100 to +100 %: 8.00 s)
      Load       about 0.11 of 0.45 N m (24 %) at 17.0 m/s: flap at landing

        Curve          input   ENTER   pulse
                           %   share      us
        point 1       -100.0  -100.0  1208.2
        point 2          0.0    +4.1  1563.0
        point 3       +100.0  +100.0  1889.6
      Either this curve, or the values under ENTER with the curve straight. Between
      its points the curve is at most 0.24 deg off.

      --------------------------------------------------------------------------------
      MATCHED SURFACES

        flaps: flapLeft and flapRight differ by 0.40 deg at most (doubt 0.52 deg),
        1 deg are allowed; between stowed and takeoff, 40 % of the way

      --------------------------------------------------------------------------------
      SERVOS ON ONE SURFACE

        rudder: the servos pull apart by 0.31 deg at most between entered pulses
        servo 1  rudder.upper
        servo 2  rudder.lower
        Together      servo 1  servo 2
                           us       us
        at -20.0 deg   1210.0   1775.0
        at 0.0 deg     1502.5   1478.9

      --------------------------------------------------------------------------------
      FINDINGS

      WARNING  the model (guard-thin)
        A guard is thin.
        -> Nothing to do.

      NOTE  surfaces.flap.servo (half-the-pulses)
        Half the pulses are not half the deflection.
        -> Nothing to do.

      --------------------------------------------------------------------------------
      PROCEDURE

      RECEIVER SUPPLY ON, LINKAGES OFF

      [ ] 1. Enter the limits of channel 7 before anything else, with the linkages off
             and the servo's lead out.
             ENTER  channel 7, low limit: -57.0 %
             ENTER  channel 7, direction: a larger percent gives a longer pulse
             ENTER  channel 7, flap at landing: -45.2 share, adds -117.9 share
             ENTER  channel 7, transit of flap: 2.50 s
             check  channel 7 shows 1495.0 to 1505.0 us
             reach  channel 7 can now send 1208.2 to 1889.6 us

      RECEIVER SUPPLY OFF, LINKAGES ON

      [ ] 2. Connect the linkage.

      --------------------------------------------------------------------------------
      CAUTIONS

      - The pilot decides.
      "
    `);
  });

  test("opens with the number of errors where there are any, and repeats it at each channel", () => {
    const error = sampleFinding({ severity: "error" });
    const channels = [1, 2, 3].map((channel) => sampleChannel({ channel }));
    const text = planToText(samplePlan({ channels, findings: [error, error] }));
    expect(linesOf(text)[0]).toBe("DO NOT ENTER THIS PLAN: it has 2 errors.");
    expect(linesOf(text).filter((line) => line.startsWith("Do not enter"))).toHaveLength(3);
  });

  test("says that the servo of a channel was never read where its degrees come from a linkage alone", () => {
    const budget = [{ cause: "rotation", standardDeg: 0.4, share: 1, assumed: { percent: 3 } }];
    const doubt = { control: "lever", detent: "landing", uncertaintyDeg: 0.8, budget };
    const line = "Readings   NOT MEASURED; degrees are worked out from the linkage alone";
    expect(linesOf(planToText(samplePlan({ channels: [sampleChannel({ doubt })] })))).toContain(line);
    expect(planToText(fullPlan)).not.toContain(line);
  });

  test("calls the value of a channel at rest and the one without a signal by one name each", () => {
    const text = planToText(fullPlan);
    expect(text).toMatch(/^ {2}at rest .*\n {2}failsafe /m);
    expect(text).not.toMatch(/neutral|signal lost/);
  });

  test("warns of nothing where there is no error", () => {
    const findings = [sampleFinding(), sampleFinding({ severity: "warning" })];
    expect(planToText(samplePlan({ findings }))).not.toMatch(/do not enter/i);
  });

  test("is plain ASCII where the names are", () => {
    expect(planToText(fullPlan)).toMatch(/^[\n -~]*$/);
  });

  test("in colour is the same text with escape sequences put in", () => {
    const coloured = planToText(fullPlan, { colour: true });
    expect(coloured).toContain("\u001b[31m");
    expect(stripVTControlCharacters(coloured)).toBe(planToText(fullPlan));
  });

  test("has no line over its columns and no unseen character, whatever the names", () => {
    const name = fc.oneof(
      fc.string({ unit: "binary", minLength: 1, maxLength: 200 }),
      fc.string({
        unit: fc.constantFrom("flap ", "\u202e", "\u001b[2J", "\n", "左", "e\u0301", "-"),
        maxLength: 60,
      }),
    );
    fc.assert(
      fc.property(name, name, name, fc.constantFrom(80, 132), (one, two, three, columns) => {
        const text = planToText(renamed(one, two, three), { columns });
        expect(linesOf(text).filter((line) => displayWidth(line) > columns)).toEqual([]);
        expect(text).not.toMatch(/[^\P{C}\n\p{Cn}\p{Co}]/u);
      }),
      { numRuns: 200 },
    );
  });

  test("shows every number to enter, whatever the names", () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 200 }), (name) => {
        const lines = linesOf(planToText(renamed(name, name, name)));
        for (const cells of [
          "-82.3  +38.2     0.0    0.4  -117.9  +92.1",
          "+44.4      -       -      -   +39.1      -",
        ])
          expect(lines.filter((line) => line.includes(cells))).toHaveLength(1);
      }),
    );
  });
});

/** The full plan with other names for the model, its surfaces and its controls. */
function renamed(model: string, surface: string, control: string) {
  const [channel] = fullPlan.channels;
  const [gang] = fullPlan.gangs;
  const [first, second] = channel?.settings ?? [];
  if (channel === undefined || gang === undefined || first === undefined || second === undefined)
    throw new Error("no full plan");
  return samplePlan({
    ...fullPlan,
    model,
    radio: { ...fullPlan.radio, name: model },
    channels: [
      {
        ...channel,
        servos: [surface, `${surface}.${model}`],
        labels: { [surface]: control },
        settings: [
          { ...first, surface, control, detent: model },
          { ...second, surface: model, control, when: { [control]: surface } },
        ],
        extremes: { ...channel.extremes, low: { ...channel.extremes.low, when: { [control]: model } } },
        transits: [{ control, from: model, to: surface, seconds: 1, secondsPerFullScale: 2 }],
      },
    ],
    matches: fullPlan.matches.map((match) => ({
      ...match,
      group: control,
      surfaces: [surface, model] as const,
    })),
    gangs: [{ ...gang, surface, servos: [control, model] }],
    findings: [sampleFinding({ at: surface, message: `${model} ${control}`, do: control })],
    procedure: fullPlan.procedure.map((step) => ({ ...step, phase: control, text: model })),
    cautions: [model],
  });
}
