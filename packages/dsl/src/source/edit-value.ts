import { type Address, formatAddress } from "@hingeline/core";
import { ts } from "ts-morph";
import { alignLists } from "./align-lists.ts";
import { insertEntries, removeEntries } from "./edit-entries.ts";
import { type HingelineNames, hingelineNames } from "./hingeline-names.ts";
import { findDifference, isObject, type Json } from "./json-data.ts";
import { layoutOf, mayHoldComment } from "./layout.ts";
import { placeOf } from "./place-of.ts";
import type { Refusal } from "./source.ts";
import type { TextEdit } from "./text-edit.ts";
import type { Traced, TracedList, TracedObject } from "./traced.ts";
import { writeNumber } from "./write-number.ts";
import { type Style, writeText, writeValue } from "./write-value.ts";

/** Edits by file, and what has to be done by hand. */
export interface Editing {
  readonly edits: Map<string, TextEdit[]>;
  readonly names: Map<string, HingelineNames>;
  readonly refusals: Refusal[];
}

/** A value as it is written now and as plain data, what it shall be, and the expression that stands in its place. */
interface Slot {
  readonly traced: Traced;
  readonly now: Json;
  readonly wanted: Json;
  readonly at: Address;
  /** Undefined where the value does not stand in braces or brackets of its own. */
  readonly expression: ts.Expression | undefined;
}

/** Collects the edits that make a value what it shall be, and touches nothing that stays as it is. */
export function editValue(slot: Slot, editing: Editing): void {
  const { traced, now, wanted, expression } = slot;
  const isReplaceable = expression !== undefined && isWrittenOut(expression);
  if (findDifference(now, wanted) === undefined) return;
  if (
    traced.kind === "object" &&
    isObject(now) &&
    isObject(wanted) &&
    hasAll(wanted, now) &&
    // A call has no braces to add a part to, and makes one kind only.
    (traced.literal !== undefined || !isReplaceable || (hasAll(now, wanted) && now.kind === wanted.kind))
  ) {
    editObject(traced, now, wanted, slot, editing);
  } else if (
    traced.kind === "list" &&
    Array.isArray(now) &&
    Array.isArray(wanted) &&
    // An empty list has no layout to go on in.
    !(now.length === 0 && isReplaceable)
  ) {
    editList(traced, now, wanted, slot, editing);
  } else if (traced.kind === "value" && traced.literal !== undefined && typeof now === typeof wanted) {
    const text = literalText(traced.literal, wanted);
    if (text === undefined) byHand(slot, editing);
    else replace(traced.literal, text, editing);
  } else if (isReplaceable) {
    const text = writeAt(expression, wanted, slot.at, editing);
    if (text === undefined) byHand(slot, editing);
    else replace(expression, text, editing);
  } else byHand(slot, editing);
}

function editObject(
  traced: TracedObject,
  now: Record<string, Json>,
  wanted: Record<string, Json>,
  slot: Slot,
  editing: Editing,
): void {
  const added: string[] = [];
  for (const [key, value] of Object.entries(wanted)) {
    const part = traced.parts.get(key);
    const at = [...slot.at, key];
    if (part !== undefined && Object.hasOwn(now, key)) {
      const expression = expressionOf(traced, key, part);
      editValue({ traced: part, now: now[key] ?? null, wanted: value, at, expression }, editing);
    } else {
      const text = traced.literal && writeAt(traced.literal, value, at, editing);
      if (text === undefined) {
        byHand(slot, editing);
        return;
      }
      added.push(`${key}: ${text}`);
    }
  }
  if (added.length === 0 || traced.literal === undefined) return;
  const { literal } = traced;
  add(literal, insertEntries(literal, literal.properties.length, added), editing);
}

function editList(
  traced: TracedList,
  now: readonly Json[],
  wanted: readonly Json[],
  slot: Slot,
  editing: Editing,
): void {
  const { literal, items } = traced;
  for (const gap of alignLists(now.map(keyOf), wanted.map(keyOf))) {
    const { oldStart, oldEnd, newStart, newEnd } = gap;
    const pairs = Math.min(oldEnd - oldStart, newEnd - newStart);
    for (let pair = 0; pair < pairs; pair += 1) {
      const i = oldStart + pair;
      const item = items[i];
      const [old, next] = [now[i], wanted[newStart + pair]];
      if (item === undefined || old === undefined || next === undefined) continue;
      editValue(
        { traced: item, now: old, wanted: next, at: [...slot.at, i], expression: literal?.elements[i] },
        editing,
      );
    }
    const more = wanted.slice(newStart + pairs, newEnd);
    if (more.length === 0 && oldEnd === oldStart + pairs) continue;
    const edits = literal && entryEdits(literal, oldStart + pairs, oldEnd, more, slot.at, editing);
    if (literal === undefined || edits === undefined) byHand(slot, editing);
    else add(literal, edits, editing);
  }
}

/** Edits that take out the entries from `start` to `end`, or where there are none put `more` before the one at `end`. */
function entryEdits(
  literal: ts.ArrayLiteralExpression,
  start: number,
  end: number,
  more: readonly Json[],
  at: Address,
  editing: Editing,
): TextEdit[] | undefined {
  if (more.length === 0) return removeEntries(literal, start, end);
  const texts: string[] = [];
  for (const item of more) {
    const text = writeAt(literal, item, [...at, end + texts.length], editing);
    if (text === undefined) return undefined;
    texts.push(text);
  }
  return insertEntries(literal, end, texts);
}

/** The expression that stands for a part in the braces of its object, if the value is written out in it. */
function expressionOf({ literal }: TracedObject, key: string, part: Traced): ts.Expression | undefined {
  const property = literal?.properties.findLast(
    (one): one is ts.PropertyAssignment =>
      ts.isPropertyAssignment(one) && "text" in one.name && one.name.text === key,
  );
  const { node } = part;
  const holds =
    property !== undefined &&
    node.getSourceFile() === property.getSourceFile() &&
    node.pos >= property.initializer.pos &&
    node.end <= property.initializer.end;
  return holds ? property.initializer : undefined;
}

/** Whether an expression holds literals and calls about them alone: nothing computed, named or remarked would be lost with it. */
function isWrittenOut(node: ts.Expression): boolean {
  if (mayHoldComment(node.getText())) return false;
  const isPlain = (one: ts.Node): boolean => {
    if (ts.isCallExpression(one)) return one.arguments.every(isPlain);
    if (ts.isPropertyAssignment(one)) return isPlain(one.initializer);
    if (ts.isPrefixUnaryExpression(one)) return ts.isNumericLiteral(one.operand);
    if (ts.isArrayLiteralExpression(one)) return one.elements.every(isPlain);
    if (ts.isObjectLiteralExpression(one)) return one.properties.every(isPlain);
    return ts.isNumericLiteral(one) || ts.isStringLiteral(one);
  };
  return isPlain(node);
}

/** A value as text for the place of `node`, or for a new entry of `node`; undefined where it is not part of a bench. */
function writeAt(node: ts.Expression, value: Json, address: Address, editing: Editing): string | undefined {
  const bench = address[2] === "servo" ? 3 : address[2] === "servos" ? 4 : undefined;
  if (bench === undefined || address[0] !== "surfaces" || address[bench] !== "bench") return undefined;
  const tree = node.getSourceFile();
  const names = editing.names.get(tree.fileName) ?? hingelineNames(tree);
  editing.names.set(tree.fileName, names);
  const braces = ts.isObjectLiteralExpression(node) ? node : enclosingBraces(node);
  const layout = braces === undefined ? undefined : layoutOf(braces);
  const style: Style = {
    names,
    quote: /^[^"']*'/.test(tree.text) ? "'" : '"',
    ...(layout?.lines === true ? { lines: layout } : {}),
  };
  return writeValue(value, address.slice(bench + 1), style);
}

function enclosingBraces(node: ts.Node): ts.ObjectLiteralExpression | undefined {
  let around: ts.Node = node.parent;
  while (around !== undefined && !ts.isObjectLiteralExpression(around)) around = around.parent;
  return around;
}

/** A literal of the same kind with another value. */
function literalText(literal: ts.Expression, wanted: Json): string | undefined {
  const text = literal.getText();
  if (typeof wanted === "number") return writeNumber(wanted, text);
  if (typeof wanted === "string") return writeText(wanted, text.charAt(0));
  return typeof wanted === "boolean" ? String(wanted) : undefined;
}

function byHand({ traced, wanted, at }: Slot, { refusals }: Editing): void {
  const name = formatAddress(at);
  const what =
    traced.kind === "value" && traced.literal === undefined
      ? `${name} is computed here, and is left alone.`
      : `${name} cannot be changed here without losing how it is written.`;
  const text = JSON.stringify(wanted);
  refusals.push({
    place: placeOf(traced.node),
    what,
    remedy: `Change it by hand so that it comes to ${text.length > 200 ? `${text.slice(0, 200)}…` : text}.`,
  });
}

function replace(node: ts.Node, text: string, editing: Editing): void {
  add(node, [{ start: node.getStart(), end: node.end, text }], editing);
}

/** Adds edits; one that is there already, because a constant is used twice, is not added again. */
function add(node: ts.Node, edits: readonly TextEdit[], editing: Editing): void {
  const { fileName } = node.getSourceFile();
  const known = editing.edits.get(fileName) ?? [];
  editing.edits.set(fileName, known);
  for (const edit of edits)
    if (!known.some(({ start, end, text }) => start === edit.start && end === edit.end && text === edit.text))
      known.push(edit);
}

function hasAll(wanted: Record<string, Json>, now: Record<string, Json>): boolean {
  return Object.keys(now).every((key) => Object.hasOwn(wanted, key));
}

function keyOf(value: Json): string {
  return JSON.stringify(value);
}
