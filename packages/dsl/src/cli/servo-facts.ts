import { compile, type Model } from "@hingeline/core";

/** What a model can state of a servo for its linkage to be sized: millimetres, degrees, degrees a microsecond. */
export interface ServoFacts {
  /** From the shaft to the hinge, aft and up. */
  readonly base?: number;
  readonly rise?: number;
  readonly rotation?: number;
  /** Largest deflections that any one control asks, by their size. */
  readonly up?: number;
  readonly down?: number;
}

/** What the model states of the servo "flapLeft" or "rudder.upper"; a sentence where it has no such servo. */
export function servoFacts(model: Model, name: string): ServoFacts | string {
  const servos = Object.entries(model.surfaces).flatMap(([surface, { servo, servos = {} }]) => [
    ...(servo === undefined ? [] : [{ name: surface, surface, servo }]),
    ...Object.entries(servos).map(([part, one]) => ({ name: `${surface}.${part}`, surface, servo: one })),
  ]);
  const found = servos.find((one) => one.name === name);
  if (found === undefined)
    return `The model has no servo "${name}"; its servos are ${servos.map((one) => one.name).join(", ")}.`;
  const { surface, servo } = found;
  const { linkage, type = {} } = servo;
  const deflections = compile(model)
    .channels.flatMap(({ settings }) => settings)
    .flatMap(({ surface: moved, wanted }) =>
      moved === surface && wanted?.deflectionDeg !== undefined ? [wanted.deflectionDeg] : [],
    );
  return {
    ...(linkage?.kind === "pushrod" ? { base: linkage.base, rise: linkage.rise } : {}),
    ...(type.rotation === undefined ? {} : { rotation: type.rotation }),
    up: -Math.min(0, ...deflections),
    down: Math.max(0, ...deflections),
  };
}
