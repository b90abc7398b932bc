import { describe, expect, test } from "vitest";
import { compile } from "../../../packages/core/src/compile/compile.ts";
import type { Bench } from "../../../packages/core/src/model/model.ts";
import { us } from "../../../packages/core/src/units/quantity.ts";
import { smallModel, straightReadings } from "../../support/small-model.ts";

const planOf = (bench: Partial<Bench>, added?: number) =>
  compile(
    smallModel({
      surfaces: {
        flap: {
          servo: {
            channel: 1,
            ...(added === undefined ? {} : { added: us(added) }),
            bench: { level: us(1500), down: us(1800), guard: us(5), readings: straightReadings, ...bench },
          },
        },
      },
    }),
  );

describe("what a device behind the receiver may add", () => {
  test("lies on top of the guard at every stop that was measured", () => {
    expect(planOf({ up: us(1200) }, 20).channels[0]?.safeUs).toEqual([1225, 1775]);
  });

  test("leaves level within reach where no stop up was measured, and is warned of there", () => {
    const { channels, findings } = planOf({ readings: straightReadings.slice(2) }, 20);
    expect(channels[0]?.safeUs).toEqual([1500, 1775]);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["added-past-level", "warning"]]);
    expect(planOf({ readings: straightReadings.slice(2) }).findings).toEqual([]);
  });
});
