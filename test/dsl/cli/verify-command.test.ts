import {
  type AsBuilt,
  asBuiltTemplate,
  canonicalJson,
  compile,
  describeServos,
  us,
  verify,
} from "@hingeline/core";
import { parseAsBuilt } from "@hingeline/core/schema";
import { describe, expect, test } from "vitest";
import { verifyToText } from "../../../packages/dsl/src/render/verify-to-text.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";
import { wrenfield } from "./wrenfield.ts";

const plan = compile(wrenfield);
const template = asBuiltTemplate(plan);

type Readings = Readonly<Record<string, { readonly pulseUs?: number; readonly deflectionDeg?: number }>>;

/** The template with these pulses and deflections filled in, by detent. */
function filled(readings: Readings, over: Partial<AsBuilt> = {}): AsBuilt {
  const channels = template.channels.map((channel) => ({
    ...channel,
    settings: (channel.settings ?? []).map((one) => ({ ...one, ...readings[one.detent ?? ""] })),
  }));
  return { ...template, channels, ...over };
}

/** Every setting 1 us and 0.3 degrees off, which is inside what is allowed. */
const right: Readings = Object.fromEntries(
  plan.channels.flatMap(({ settings }) =>
    settings.map(({ detent = "", enter, gives }) => [
      detent,
      { pulseUs: enter.pulseUs + 1, deflectionDeg: (gives?.deflectionDeg ?? 0) - 0.3 },
    ]),
  ),
);
/** The pulse of the percent with its minus sign typed in front. */
const lostSign: Readings = { ...right, landing: { pulseUs: 1250 } };

const squashed = (text: string) => text.replaceAll(/\s+/g, " ");

function verified(asBuilt: unknown, ...options: string[]) {
  const disk = new Map([[`${fixtures}built.json`, JSON.stringify(asBuilt)]]);
  return run(["verify", "wrenfield.ts", "built.json", ...options], fakeIo({ disk }));
}

describe("verify", () => {
  test("of readings inside what is allowed passes with 0, and says what was not measured", async () => {
    const { exitCode, stdout, stderr } = await verified(
      filled(right, { by: "A. Fitter", checkedBy: "B. Looker" }),
    );
    expect([exitCode, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^Result {5}PASSED as far as it was measured: of 13 lines 6 agreed, 0 differed/m);
    expect(stdout).toMatch(/^ {2}failsafe .* NOT MEASURED$/m);
    expect(stdout).not.toContain("CAUSES");
    expect(stdout).not.toContain("No second person");
    expect(stdout).toMatch(/^Builder +A\. Fitter\nSigned +_+ +Date _+$/m);
  });

  test("of a reading that differs names the cause and exits with 1", async () => {
    const { exitCode, stdout, stderr } = await verified(filled(lostSign));
    expect([exitCode, stderr]).toEqual([1, ""]);
    expect(stdout).toMatch(/^ {2}lever at landing +1750\.0 +3\.5 +1250\.0 +-500\.0 +DIFFERS$/m);
    expect(squashed(stdout)).toContain(
      "- In channel 1 (flap), lever at landing has lost or gained a minus sign: -50 % in place of +50 %.",
    );
    expect(stdout).toContain("No second person has checked this.");
    expect(stdout).toContain("Not to be signed");
  });

  test("of a pulse past the safe ones says first that it must not be connected", async () => {
    const { exitCode, stdout } = await verified(filled({ ...right, landing: { pulseUs: 1806 } }));
    expect(exitCode).toBe(1);
    const [, second] = stdout.split("\n\n");
    expect(second).toContain("NOT PASSED");
    expect(squashed(stdout)).toContain(
      "! Channel 1, lever at landing: 1806.0 us is outside the safe 1210.0 to 1790.0 us. Receiver off;",
    );
    expect(stdout).toMatch(/^ {2}lever at landing .* UNSAFE$/m);
  });

  test("--format json prints the verification as canonical JSON", async () => {
    const asBuilt = filled(lostSign);
    const servos = describeServos(wrenfield);
    const deflectionAt = (channel: number, surface: string, pulseUs: number) =>
      servos
        .find((one) => one.channel === channel && one.surface === surface)
        ?.measured?.response.deflectionAt(us(pulseUs));
    expect(await verified(asBuilt, "--format", "json")).toEqual({
      exitCode: 1,
      stdout: `${canonicalJson(verify(plan, asBuilt, { deflectionAt }))}\n`,
      stderr: "",
    });
  });

  test("of readings taken on another revision does not pass, whatever they are", async () => {
    const { exitCode, stdout } = await verified(filled(right, { plan: "0123abcd" }));
    expect(exitCode).toBe(1);
    expect(stdout).toMatch(/^Readings {3}taken on revision 0123abcd, ANOTHER PLAN$/m);
    expect(stdout).toContain("another revision of the plan");
  });

  test("of a model with an error refuses: there is nothing that may be entered", async () => {
    const disk = new Map([[`${fixtures}built.json`, JSON.stringify(template)]]);
    const { exitCode, stdout, stderr } = await run(["verify", "too-far.ts", "built.json"], fakeIo({ disk }));
    expect([exitCode, stdout]).toEqual([1, ""]);
    expect(stderr).toMatch(/^1 error/);
    expect(stderr).toContain("there is nothing to verify");
  });

  test.each([
    [
      "no as-built file",
      { ...template, version: 2 },
      /built\.json is no as-built file: version: expected 1, got 2\./,
    ],
    [
      "an unknown key",
      { ...template, extra: 1 },
      /built\.json is no as-built file: extra: no as-built file has this; take it out\./,
    ],
    ["a null", { ...template, by: null }, /built\.json is no as-built file: by: expected a text, got null\./],
  ])("of %s exits with 2 and one sentence", async (_, asBuilt, sentence) => {
    const { exitCode, stdout, stderr } = await verified(asBuilt);
    expect([exitCode, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(sentence);
  });

  test("without a file, or with two of what it takes, exits with 2", async () => {
    for (const args of [["wrenfield.ts"], ["wrenfield.ts", "built.json", "--template"], ["-", "-"]]) {
      const { exitCode, stdout } = await run(["verify", ...args]);
      expect([exitCode, stdout]).toEqual([2, ""]);
    }
  });
});

describe("verify --template", () => {
  test("prints an as-built file in which nothing is measured, and which verify takes without passing it", async () => {
    const { exitCode, stdout, stderr } = await run(["verify", "wrenfield.ts", "--template"]);
    expect([exitCode, stderr]).toEqual([0, ""]);
    const data: unknown = JSON.parse(stdout);
    expect(parseAsBuilt(data)).toEqual({ asBuilt: template });
    const read = await verified(data);
    expect(read.exitCode).toBe(1);
    expect(squashed(read.stdout)).toContain(
      "NOTHING WAS MEASURED: of 13 lines 0 agreed, 0 differed, 0 cannot be told, 13 not measured",
    );
  });
});

test("no line of the text is wider than 80 columns, and colour changes nothing but styling", () => {
  for (const readings of [right, lostSign]) {
    const asBuilt = filled(readings);
    const plain = verifyToText(verify(plan, asBuilt), plan, asBuilt);
    expect(Math.max(...plain.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    const coloured = verifyToText(verify(plan, asBuilt), plan, asBuilt, { colour: true });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape character is what styling is made of
    expect(coloured.replaceAll(/\u001b\[\d+m/g, "")).toBe(plain);
    expect(coloured).not.toBe(plain);
  }
});
