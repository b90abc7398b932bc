import type { ts } from "ts-morph";
import type { Traced } from "./traced.ts";

/** Plain data; or what is not, with the sentence for it where nothing has told of it yet. */
export type Plain = { readonly value: unknown } | { readonly lacking: ts.Node; readonly why?: string };

/** A model has at most 32 levels. */
const deepest = 64;

/**
 * A traced value as plain data, objects fresh, keys in the order in which running would set them. Not plain is what is unknown, a
 * function, too deep, or too much by `spend`.
 */
export function toPlain(traced: Traced, spend: (node: ts.Node) => boolean, depth = 0): Plain {
  const { node } = traced;
  if (!spend(node)) return { lacking: node };
  if (depth > deepest) return { lacking: node, why: `This lies more than ${deepest} levels deep.` };
  switch (traced.kind) {
    case "value":
      return { value: traced.value };
    case "list": {
      if (traced.open.length > 0) return { lacking: node };
      const list: unknown[] = [];
      for (const item of traced.items) {
        const plain = toPlain(item, spend, depth + 1);
        if ("lacking" in plain) return plain;
        list.push(plain.value);
      }
      return { value: list };
    }
    case "object": {
      if (traced.open.length > 0) return { lacking: node };
      const object: Record<string, unknown> = {};
      for (const [key, part] of traced.parts) {
        const plain = toPlain(part, spend, depth + 1);
        if ("lacking" in plain) return plain;
        object[key] = plain.value;
      }
      return { value: object };
    }
    case "function":
    case "module":
      return { lacking: node, why: "A function is no part of a model." };
    case "unknown":
      return { lacking: node };
  }
}
