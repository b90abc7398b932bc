import { type Bench, benchAddresses, formatAddress, type Model, type Reading } from "@hingeline/core";
import { benchAt, withBench } from "./bench-at.ts";
import type { Session } from "./session.ts";

/** One part of a bench that the session changed, and what it is now. */
export interface BenchChange {
  readonly address: string;
  readonly value: unknown;
}

const keys = ["up", "level", "down", "freeCurrent", "readings"] as const;

/** The model as it reads once all changes are written. */
export function writtenModel(session: Session): Model {
  return session.servos.reduce(
    (model, servo) => withBench(model, servo, writtenBench(session, servo)),
    session.before,
  );
}

/** What to change in the model, in the order of the servos; what was read again and came out the same is no change. */
export function changesOf(session: Session): readonly BenchChange[] {
  const addresses = benchAddresses(session.before);
  return session.servos.flatMap((servo) => {
    const address = addresses.get(servo) ?? [];
    const [was, is] = [benchAt(session.before, servo), writtenBench(session, servo)];
    return [...keys, "measured" as const]
      .filter((key) => is[key] !== undefined && !same(was[key], is[key]))
      .map((key) => ({ address: formatAddress([...address, key]), value: is[key] }));
  });
}

/** A bench as it is written: when it was measured is recorded only where something was. */
function writtenBench({ before, model, measured }: Session, servo: string): Bench {
  const was = benchAt(before, servo);
  const is = withoutIdleWays(was, benchAt(model, servo));
  const isChanged = keys.some((key) => is[key] !== undefined && !same(was[key], is[key]));
  if (!isChanged) return was;
  return Object.keys(measured).length === 0 ? is : { ...is, measured: { ...was.measured, ...measured } };
}

/** Readings that were all taken one way say nothing about ways. */
function withoutIdleWays(was: Bench, is: Bench): Bench {
  const { readings } = is;
  const hasWays = was.readings?.some(([, , way]) => way !== undefined) === true;
  if (readings === undefined || hasWays || readings.some(([, , way]) => way === "back")) return is;
  return { ...is, readings: readings.map(([pulse, at]): Reading => [pulse, at]) };
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
