import type { Model, Reading, SelectorMoves, Servo, Surface } from "../../packages/core/src/model/model.ts";
import type { Deg, Us } from "../../packages/core/src/units/quantity.ts";
import { deg, pct, us } from "../../packages/core/src/units/quantity.ts";

/** Readings on the straight line of 0.1 degrees per microsecond through level at 1500 us, 1200 to 1800 us. */
export const straightReadings: readonly Reading[] = [1200, 1350, 1500, 1650, 1800].map(
  (pulse): Reading => [us(pulse), deg((pulse - 1500) / 10)],
);

/** A servo on channel 1 between 1200 and 1800 us, straight, without a guard; `over` replaces its parts. */
export function smallServo(over: Partial<Servo> = {}): Servo {
  return {
    channel: 1,
    bench: { up: us(1200), level: us(1500), down: us(1800), guard: us(10), readings: straightReadings },
    ...over,
  };
}

/** A surface with that servo whose bench has some parts replaced. */
export function smallSurface(bench: Partial<Servo["bench"]> = {}, over: Partial<Servo> = {}): Surface {
  const servo = smallServo(over);
  return { servo: { ...servo, bench: { ...servo.bench, ...bench } } };
}

/** What the lever of the small model does. */
export const smallMoves = {
  lever: {
    stowed: { flap: deg(0) },
    takeoff: { flap: deg(12) },
    landing: { flap: deg(25) },
  } satisfies SelectorMoves,
};

/** One flap of three detents on a radio of 5 us and 1 percent steps; `over` replaces parts of the model. */
export function smallModel(over: Partial<Model> = {}): Model {
  return {
    format: "hingeline/model",
    version: 1,
    name: "Wrenfield 20",
    radio: {
      name: "desk set",
      centre: us(1500),
      per100: us(500),
      reach: pct(100),
      step: pct(1),
      endPoints: "clamp",
      curvePoints: 0,
    },
    surfaces: { flap: smallSurface() },
    controls: { lever: { kind: "selector", detents: ["stowed", "takeoff", "landing"] } },
    moves: smallMoves,
    failsafe: { lever: "stowed" },
    ...over,
  };
}

/** Readings as pairs of plain numbers. */
export function readings(...pairs: readonly (readonly [number, number])[]): Reading[] {
  return pairs.map(([pulse, deflection]): Reading => [pulse as Us, deflection as Deg]);
}
