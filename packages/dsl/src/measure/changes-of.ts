import { type Bench, benchAddresses, formatAddress, type Reading } from "@hingeline/core";
import { benchAt } from "./bench-at.ts";
import type { Session } from "./session.ts";

/** One part of a bench that the session changed, and what it is now. */
export interface BenchChange {
  readonly address: string;
  readonly value: unknown;
}

const keys = ["up", "level", "down", "freeCurrent", "readings"] as const;

/** What to change in the model, in the order of the servos; what was read again and came out the same is no change. */
export function changesOf({ before, model, servos, measured }: Session): readonly BenchChange[] {
  const addresses = benchAddresses(before);
  return servos.flatMap((servo) => {
    const address = addresses.get(servo) ?? [];
    const was = benchAt(before, servo);
    const is = withoutIdleWays(was, benchAt(model, servo));
    const changed = keys.filter((key) => is[key] !== undefined && !same(was[key], is[key]));
    const changes = changed.map((key) => ({ address: formatAddress([...address, key]), value: is[key] }));
    const record = { ...was.measured, ...measured };
    return changed.length === 0 || same(record, was.measured ?? {})
      ? changes
      : [...changes, { address: formatAddress([...address, "measured"]), value: record }];
  });
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
