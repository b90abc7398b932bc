import type { Model, Servo } from "../../packages/core/src/model/model.ts";

/** The same model without its linkages: every servo known by its readings alone. */
export function readingsOnly<M extends Model>(model: M): M {
  const bare = ({ linkage: _, ...servo }: Servo): Servo => servo;
  const surfaces = Object.entries(model.surfaces).map(([name, { servo, servos, ...facts }]) => [
    name,
    {
      ...facts,
      ...(servo === undefined ? {} : { servo: bare(servo) }),
      ...(servos === undefined
        ? {}
        : { servos: Object.fromEntries(Object.entries(servos).map(([part, one]) => [part, bare(one)])) }),
    },
  ]);
  return { ...model, surfaces: Object.fromEntries(surfaces) };
}
