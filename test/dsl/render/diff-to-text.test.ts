import {
  compile,
  diffPlans,
  orderOfEntry,
  type PlanChange,
  portModel,
  type SetupPlan,
  verifyAgain,
} from "@hingeline/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diffToText } from "../../../packages/dsl/src/render/diff-to-text.ts";
import { portToText } from "../../../packages/dsl/src/render/port-to-text.ts";
import { arbitraryModel, arbitraryRadio } from "../../support/arbitrary-model.ts";
import {
  fullChannel,
  fullPlan,
  sampleChannel,
  sampleFinding,
  samplePlan,
} from "../../support/sample-plan.ts";

const names = ["before.json", "after.json"] as const;

function textOf(before: SetupPlan, after: SetupPlan, columns = 80): string {
  const changes = diffPlans(before, after);
  const told = { changes, verify: verifyAgain(changes, after), procedure: orderOfEntry(after, before) };
  return diffToText({ names, before, after, ...told }, { columns });
}

function expectWidth(text: string, columns: number): void {
  expect(text.split("\n").filter((line) => line.length > columns)).toEqual([]);
  expect(text).not.toMatch(/undefined|NaN|\[object/);
}

describe("diffToText", () => {
  test("keeps to its columns, for any two plans", () => {
    fc.assert(
      fc.property(
        arbitraryModel.map(compile),
        arbitraryModel.map(compile),
        fc.constantFrom(80, 100),
        (before, after, columns) => expectWidth(textOf(before, after, columns), columns),
      ),
      { numRuns: 20 },
    );
    expectWidth(textOf(samplePlan(), fullPlan), 80);
    expectWidth(textOf(fullPlan, samplePlan()), 80);
  });

  test("of the same plans says that nothing differs, and both revisions are one", () => {
    const text = textOf(fullPlan, structuredClone(fullPlan));
    const [, first, second] = /revision (\w{8})\n.*revision (\w{8})\n\nNothing differs\.\n$/.exec(text) ?? [];
    expect(first).toBeDefined();
    expect(first).toBe(second);
  });

  const base = samplePlan({ channels: [fullChannel] });
  const withChannel = (over: Partial<SetupPlan["channels"][number]>) =>
    samplePlan({ channels: [{ ...fullChannel, ...over }] });
  const { curve: _, transits: __, labels: ___, ...bare } = fullChannel;

  test.each<[PlanChange["kind"] | string, SetupPlan, string]>([
    ["model", { ...base, model: "Other" }, "\nModel  Heronswood tug -> Other\n"],
    ["channel", { ...base, channels: [...base.channels, sampleChannel()] }, "\nCHANNEL 5   flap (new)\n"],
    [
      "channel",
      { ...base, channels: [] },
      "\nCHANNEL 7   flapLeft and rudder.upper (gone: nothing of it may stay on this output)\n",
    ],
    ["servos", withChannel({ servos: ["flapLeft"] }), "  servos: flapLeft and rudder.upper -> flapLeft\n"],
    ["label", withChannel({ labels: { flapLeft: "F-L-11" } }), '  label of flapLeft: "F-L-07" -> "F-L-11": '],
    [
      "direction",
      withChannel({ direction: "falling" }),
      "  sense: the pulse rises -> falls as the deflection grows\n",
    ],
    ["safe", withChannel({ safeUs: [1210, 1890] }), "  safe: 1208.0 to 1890.0 -> 1210.0 to 1890.0 us\n"],
    [
      "value",
      withChannel({ failsafe: { percent: 10, pulseUs: 1551.2, sharePercent: 0.7 } }),
      "  failsafe: ENTER +72.7 -> +10.0 %; 1872.2 -> 1551.2 us\n",
    ],
    [
      "setting",
      withChannel({ settings: fullChannel.settings.slice(0, 1) }),
      "  rudder: roll at -1, phase at thermal: gone, was ENTER +39.1 %, 1700.2 us\n",
    ],
    [
      "curve",
      samplePlan({
        channels: [{ ...bare, transits: fullChannel.transits ?? [], labels: fullChannel.labels ?? {} }],
      }),
      "  curve: gone, was -100.0: -57.0 %, 0.0: +12.3 %, +100.0: +76.1 %\n",
    ],
    ["transit", withChannel({ transits: [] }), "  transit of flap: gone, was 2.50 s\n"],
    [
      "finding",
      { ...base, findings: [sampleFinding()] },
      "\nNEW FINDINGS\n\nNOTE  surfaces.flap.servo (half-the-pulses)\n",
    ],
    ["computed", withChannel({ guardUs: [5, 6.5] }), "\nComputed anew  guard of channel 7\n"],
  ])("%s: %#", (_kind, after, expected) => {
    expect(textOf(base, after, 120)).toContain(expected);
  });
});

test("where limits scale a position changes in shares, in the diff as in the order of entry, and a limit in percent", () => {
  const { radio } = fullPlan;
  const before = samplePlan({ radio, channels: [sampleChannel()] });
  const after = samplePlan({
    radio,
    channels: [
      sampleChannel({
        limits: { low: { percent: -56, pulseUs: 1220 }, high: { percent: 76.1, pulseUs: 1889.632 } },
        failsafe: { percent: 10, pulseUs: 1551.2, sharePercent: 0.7 },
      }),
    ],
  });
  const text = textOf(before, after, 120);
  expect(text).toContain("low limit: ENTER -57.0 -> -56.0 %;");
  expect(text).toContain("failsafe: ENTER +94.9 -> +0.7 share;");
  expect(text).toMatch(/ENTER {2}channel 5, failsafe: \+0\.7 share$/m);
  const curved = samplePlan({ radio, channels: [sampleChannel({ curve: fullChannel.curve ?? [] })] });
  expect(textOf(before, curved, 120)).toContain(
    "new: -100.0: -100.0 share, 0.0: +4.1 share, +100.0: +100.0 share",
  );
});

describe("portToText", () => {
  test("keeps to its columns, for any model and radio", () => {
    fc.assert(
      fc.property(arbitraryModel, arbitraryRadio, (model, radio) => {
        expectWidth(portToText(portModel(model, radio)), 80);
      }),
      { numRuns: 15 },
    );
  });
});
