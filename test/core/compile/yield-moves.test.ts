import { expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import { smallModel, smallServo } from "../../support/small-model.ts";

test("what gives way on a bench without readings is told in microseconds", () => {
  const { readings: _, ...bench } = smallServo().bench;
  const place = (part: number) => ({ kind: "part", part }) as const;
  const { findings } = compile(
    smallModel({
      surfaces: { flap: { servo: { channel: 1, bench } } },
      controls: { lever: { kind: "selector", detents: ["stowed", "landing"] }, pitch: { kind: "stick" } },
      moves: {
        lever: { stowed: {}, landing: { flap: place(0.6) } },
        pitch: { flap: [place(-0.6), place(0.6)] },
      },
      yields: { flap: ["lever"] },
    }),
  );
  // 180 us and 180 us of the 290 us that are safe.
  expect(findings.find(({ code }) => code === "gave-way")?.message).toBe(
    "lever at landing gives way on flap: 110 us in place of 180 us.",
  );
});
