import type { Address } from "../address/address.ts";
import { describeValue } from "./describe-value.ts";
import type { Json } from "./json.ts";
import type { ModelProblem } from "./model-problem.ts";

const deepest = 32;
const mostValues = 50_000;
const mostProblems = 100;

/**
 * A copy of `data` that is JSON data and nothing else, or the problems that keep it from being that, at most 100.
 * It never throws and runs no code of `data`, save that of proxies: a function, a getter, a cycle, an object with a
 * class, NaN, `undefined` in a list, more than 32 levels or more than 50,000 values are problems. A key that holds `undefined` is
 * left out. -0 becomes 0.
 */
export function copyPlain(data: unknown): { readonly data: Json } | { readonly problems: ModelProblem[] } {
  const state: State = { problems: [], around: new Set(), left: mostValues };
  const copy = copyValue(data, [], state);
  return state.problems.length === 0 ? { data: copy } : { problems: state.problems };
}

interface State {
  readonly problems: ModelProblem[];
  /** The objects that the value at hand stands in. */
  readonly around: Set<object>;
  /** How many more values are taken. */
  left: number;
}

function copyValue(value: unknown, address: Address, state: State): Json {
  state.left -= 1;
  if (state.left < 0) return refuse(state, address, `more than ${mostValues} values`);
  if (value === null || typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "number" && Number.isFinite(value)) return value + 0;
  if (typeof value !== "object") return refuse(state, address, describeValue(value));
  if (state.around.has(value)) return refuse(state, address, "an object that holds itself");
  if (address.length >= deepest) return refuse(state, address, `more than ${deepest} levels`);
  state.around.add(value);
  try {
    return Array.isArray(value) ? copyList(value, address, state) : copyObject(value, address, state);
  } catch {
    return refuse(state, address, "an object that cannot be read");
  } finally {
    state.around.delete(value);
  }
}

function copyList(list: readonly unknown[], address: Address, state: State): Json {
  const copy: Json[] = [];
  for (let index = 0; index < list.length && !isOver(state); index += 1) {
    copy.push(copyProperty(list, String(index), [...address, index], state));
  }
  return copy;
}

function copyObject(object: object, address: Address, state: State): Json {
  const prototype: unknown = Object.getPrototypeOf(object);
  // An object of another realm has another Object.prototype, which has no prototype either.
  if (prototype !== null && Object.getPrototypeOf(prototype) !== null) {
    return refuse(state, address, "an object with a class");
  }
  if (Object.getOwnPropertySymbols(object).length > 0)
    return refuse(state, address, "an object with symbol keys");
  const copy: Record<string, Json> = {};
  for (const key of Object.keys(object)) {
    if (isOver(state)) break;
    if (key === "__proto__") refuse(state, [...address, key], 'the key "__proto__"');
    // As in JSON, a key without a value is none; spreads write many where optional keys may hold undefined.
    else if (!isUndefined(object, key)) copy[key] = copyProperty(object, key, [...address, key], state);
  }
  return copy;
}

function isUndefined(object: object, key: string): boolean {
  const property = Object.getOwnPropertyDescriptor(object, key);
  return property !== undefined && "value" in property && property.value === undefined;
}

function copyProperty(object: object, key: string, address: Address, state: State): Json {
  const property = Object.getOwnPropertyDescriptor(object, key);
  if (property === undefined) return refuse(state, address, "nothing");
  if (!("value" in property)) return refuse(state, address, "a getter or setter");
  return copyValue(property.value, address, state);
}

function isOver(state: State): boolean {
  return state.problems.length >= mostProblems || state.left < 0;
}

function refuse(state: State, address: Address, received: string): null {
  state.problems.push({ kind: "notPlain", address, expected: "JSON data", received });
  return null;
}
