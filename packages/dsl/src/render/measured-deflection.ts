import { type DeflectionAt, describeServos, type Model, us } from "@hingeline/core";

/** The measured response of every servo of a model, found by channel and surface. */
export function measuredDeflection(model: Model): DeflectionAt {
  const servos = describeServos(model);
  return (channel, surface, pulseUs) =>
    servos
      .find((one) => one.channel === channel && one.surface === surface)
      ?.measured?.response.deflectionAt(us(pulseUs));
}
