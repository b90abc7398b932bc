import type { Pushrod } from "../../packages/core/src/linkage/linkage.ts";
import type { Instruments, Model } from "../../packages/core/src/model/model.ts";
import { deg, degPerUs, mm, us } from "../../packages/core/src/units/quantity.ts";
import { smallModel } from "./small-model.ts";

/** An aileron's pushrod, as a builder measures it with a steel rule. */
export const aileronRod: Pushrod = {
  kind: "pushrod",
  arm: mm(12),
  horn: mm(16),
  base: mm(62),
  rise: mm(-4),
  armAt: deg(-90),
  hornAt: deg(-86),
};

/** The small flap known by that linkage alone, its servo 0.094 deg/us, its detents at -18, 0 and 12 deg. */
export function neverRead(over: Partial<Model> = {}, linkage: Pushrod = aileronRod, rotation = 0.094): Model {
  return smallModel({
    instruments: { pulse: us(1), deflection: deg(0.25) } satisfies Instruments,
    surfaces: {
      flap: {
        servo: {
          channel: 1,
          type: { rotation: degPerUs(rotation) },
          turns: "clockwise",
          bench: { up: us(1140), level: us(1488), down: us(1845) },
          linkage,
        },
      },
    },
    moves: { lever: { stowed: { flap: deg(-18) }, takeoff: { flap: deg(0) }, landing: { flap: deg(12) } } },
    ...over,
  });
}
