import { ts } from "ts-morph";
import { capital, nameSyntax } from "./name-syntax.ts";
import type { Reader } from "./reader.ts";
import type { Traced, TracedList, TracedObject } from "./traced.ts";

/** An object literal: properties, shorthand and spreads, a later one over an earlier one of the same name. */
export function readObject(node: ts.ObjectLiteralExpression, reader: Reader): TracedObject {
  const parts = new Map<string, Traced>();
  const open: ts.Node[] = [];
  for (const property of node.properties) {
    if (ts.isSpreadAssignment(property)) {
      const spread = reader.read(property.expression);
      if (spread.kind === "object") {
        for (const [key, part] of spread.parts) if (reader.spend(property)) parts.set(key, part);
        open.push(...spread.open);
      } else open.push(refuseSpread(property, spread, "an object", reader));
    } else if (ts.isPropertyAssignment(property) || ts.isShorthandPropertyAssignment(property)) {
      const key = readKey(property.name, reader);
      const part = ts.isPropertyAssignment(property)
        ? reader.read(property.initializer)
        : reader.resolve(property.name);
      if (key === undefined) open.push(property);
      else parts.set(key, { ...part, key: property.name });
    } else {
      open.push(
        reader.refuse(property, `${capital(nameSyntax(property))} is not read without running it.`).node,
      );
    }
  }
  return { kind: "object", node, parts, literal: node, open };
}

/** A list literal, its spreads taken in. */
export function readList(node: ts.ArrayLiteralExpression, reader: Reader): TracedList {
  const { items, open, spread } = readItems(node.elements, reader);
  return { kind: "list", node, items, literal: spread ? undefined : node, open };
}

/** Items of a list or arguments of a call. */
export function readItems(
  elements: readonly ts.Expression[],
  reader: Reader,
): { readonly items: readonly Traced[]; readonly open: readonly ts.Node[]; readonly spread: boolean } {
  const items: Traced[] = [];
  const open: ts.Node[] = [];
  let spread = false;
  for (const element of elements) {
    if (!ts.isSpreadElement(element)) items.push(reader.read(element));
    else {
      spread = true;
      const list = reader.read(element.expression);
      if (list.kind === "list") {
        for (const item of list.items) if (reader.spend(element)) items.push(item);
        open.push(...list.open);
      } else open.push(refuseSpread(element, list, "a list", reader));
    }
  }
  return { items, open, spread };
}

/** `a.b` and `a["b"]`: a part that is there. */
export function readAccess(
  node: ts.PropertyAccessExpression | ts.ElementAccessExpression,
  reader: Reader,
): Traced {
  const whole = reader.read(node.expression);
  if (whole.kind === "unknown") return { kind: "unknown", node };
  if (node.questionDotToken !== undefined) return reader.refuse(node, "?. is not read without running it.");
  const key = ts.isPropertyAccessExpression(node)
    ? node.name.text
    : keyOf(reader.read(node.argumentExpression));
  if (key === undefined)
    return reader.refuse(node, "What stands in these brackets is not known without running it.");
  const part =
    whole.kind === "object"
      ? whole.parts.get(key)
      : whole.kind === "list"
        ? whole.items[indexOf(key)]
        : whole.kind === "module"
          ? whole.find(key)
          : undefined;
  if (whole.kind !== "module" && part === undefined && "open" in whole && whole.open.length > 0)
    return { kind: "unknown", node };
  return part ?? reader.refuse(node, `There is no "${key}" in this that is read without running it.`);
}

function readKey(name: ts.PropertyName, reader: Reader): string | undefined {
  const key = ts.isComputedPropertyName(name)
    ? keyOf(reader.read(name.expression))
    : ts.isPrivateIdentifier(name) || ts.isBigIntLiteral(name)
      ? undefined
      : keyOf({
          kind: "value",
          value: ts.isNumericLiteral(name) ? Number(name.text) : name.text,
          node: name,
          literal: undefined,
        });
  if (key === undefined) reader.refuse(name, "The name of this part is not known without running it.");
  // It sets the prototype in one spelling and a part in another.
  else if (key === "__proto__")
    reader.refuse(name, '"__proto__" is no name for a part.', "Choose another name.");
  else return key;
  return undefined;
}

function keyOf(key: Traced): string | undefined {
  if (key.kind !== "value") return undefined;
  return typeof key.value === "string" || typeof key.value === "number" ? String(key.value) : undefined;
}

/** "2" as 2; what is no index is past every list. */
function indexOf(key: string): number {
  return /^(?:0|[1-9]\d{0,8})$/.test(key) ? Number(key) : -1;
}

function refuseSpread(node: ts.Node, spread: Traced, wanted: string, reader: Reader): ts.Node {
  if (spread.kind !== "unknown") reader.refuse(node, `Only ${wanted} can be spread here.`);
  return node;
}
