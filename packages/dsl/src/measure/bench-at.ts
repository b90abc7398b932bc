import { type Bench, benchAddresses, type Model } from "@hingeline/core";

/** The bench of one servo, by its name in the plan. Throws where the model has no such servo. */
export function benchAt(model: Model, servo: string): Bench {
  return walk(model, addressOf(model, servo)) as Bench;
}

/** The model with another bench for one servo. Throws where the model has no such servo. */
export function withBench(model: Model, servo: string, bench: Bench): Model {
  return put(model, addressOf(model, servo), bench) as Model;
}

function addressOf(model: Model, servo: string): readonly (string | number)[] {
  const address = benchAddresses(model).get(servo);
  if (address === undefined) throw new Error(`the model has no servo "${servo}"`);
  return address;
}

function walk(value: unknown, address: readonly (string | number)[]): unknown {
  return address.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], value);
}

function put(value: unknown, [key, ...rest]: readonly (string | number)[], part: unknown): unknown {
  if (key === undefined) return part;
  const object = value as Record<string, unknown>;
  return { ...object, [key]: put(object[key], rest, part) };
}
