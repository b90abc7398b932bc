import type { ts } from "ts-morph";
import { hingelineFunctions } from "./hingeline-functions.ts";
import { capital, nameSyntax } from "./name-syntax.ts";
import { readItems } from "./read-parts.ts";
import type { Reader } from "./reader.ts";
import { toPlain } from "./to-plain.ts";
import { computed, type Scalar, type Traced } from "./traced.ts";

/** A call of a function of hingeline, which is really called. Where an argument is unknown, only the places of its parts are. */
export function readCall(node: ts.CallExpression, reader: Reader): Traced {
  const callee = reader.read(node.expression);
  if (callee.kind === "unknown") return { kind: "unknown", node };
  const called = callee.kind === "function" ? hingelineFunctions.get(callee.name) : undefined;
  if (called === undefined || node.questionDotToken !== undefined)
    return reader.refuse(node, `${capital(nameSyntax(node))} is not made without running the model.`);
  const { items, open } = readItems(node.arguments, reader);
  const origin = called.origin(items, node);
  const values: unknown[] = [];
  for (const item of items) {
    const plain = toPlain(item, reader.spend);
    if ("lacking" in plain) {
      if (plain.why !== undefined) reader.refuse(plain.lacking, plain.why);
      return origin ?? { kind: "unknown", node };
    }
    values.push(plain.value);
  }
  if (open.length > 0) return { kind: "unknown", node };
  try {
    return retrace(Reflect.apply(called.run, undefined, values), origin, node);
  } catch (error) {
    const why =
      error instanceof RangeError ? error.message : `${node.expression.getText()} does not take this`;
    reader.refuse(node, `${why}.`, "Correct what it is given.");
    return origin ?? { kind: "unknown", node };
  }
}

/** The result of a real call with the places of its arguments; what they do not hold is computed by the call. */
function retrace(result: unknown, origin: Traced | undefined, node: ts.Node): Traced {
  if (Array.isArray(result)) {
    const from = origin?.kind === "list" ? origin : undefined;
    const items = result.map((item: unknown, index) => retrace(item, from?.items[index], node));
    return { kind: "list", node: from?.node ?? node, items, literal: from?.literal, open: [] };
  }
  if (typeof result === "object" && result !== null) {
    const from = origin?.kind === "object" ? origin : undefined;
    const parts = new Map<string, Traced>();
    for (const [key, part] of Object.entries(result)) {
      const before = from?.parts.get(key);
      parts.set(key, { ...retrace(part, before, node), key: before?.key });
    }
    return { kind: "object", node: from?.node ?? node, parts, literal: from?.literal, open: [] };
  }
  const value = result as Scalar;
  // Equal with ===, so that -0, which JSON writes as 0, keeps its place.
  return origin?.kind === "value" && origin.value === value ? { ...origin, value } : computed(value, node);
}
