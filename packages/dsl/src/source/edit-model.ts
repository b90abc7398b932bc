import { type Address, formatAddress, parseAddress } from "@hingeline/core";
import { type Editing, editValue } from "./edit-value.ts";
import { findDifference, isJson, type Json, setAt } from "./json-data.ts";
import { locateIn } from "./locate.ts";
import { parseFile } from "./parse-file.ts";
import { readData } from "./read-model.ts";
import type { Refusal, Source, SourceFile } from "./source.ts";
import { applyEdits } from "./text-edit.ts";
import type { Traced } from "./traced.ts";

/** What a value of the model shall be, as plain data: `{ address: "surfaces.flap.servo.bench.level", value: 1874 }`. */
export interface ModelChange {
  readonly address: string;
  /** A number in the unit that the address has; a list of readings; a stop; a date. Where nothing stands yet, it is added. */
  readonly value: unknown;
}

/** The files that change, with their new texts; or why nothing was changed. */
export type EditedModel =
  | { readonly files: readonly { readonly path: string; readonly text: string }[] }
  | { readonly refusals: readonly [Refusal, ...Refusal[]] };

/**
 * The texts of the files that change so that the model means the changes and nothing else; every character that is not part of
 * a changed value stays. What is computed is never overwritten but refused with what to do by hand, and so is a change that
 * would show elsewhere too. All or nothing.
 */
export function editModel(source: Source, changes: readonly ModelChange[]): EditedModel {
  const read = readData(source);
  if ("refusals" in read) return read;
  const { data, root } = read;
  if (!isJson(data)) return refuse(root, [], "The model is no plain data.", "Correct the model.");
  const addresses: Address[] = [];
  let wanted: Json = data;
  for (const { address, value } of changes) {
    const parsed = parseAddress(address);
    const next = parsed === undefined || !isJson(value) ? undefined : setAt(wanted, parsed, value);
    if (parsed === undefined || next === undefined)
      return refuse(
        root,
        parsed ?? [],
        `A change of "${address}" to this is not possible.`,
        "Correct the change.",
      );
    addresses.push(parsed);
    wanted = next;
  }
  const editing: Editing = { edits: new Map(), names: new Map(), refusals: [] };
  editValue({ traced: root, now: data, wanted, at: [], expression: undefined }, editing);
  const [first, ...others] = editing.refusals;
  if (first !== undefined) return { refusals: [first, ...others] };
  const files = editedFiles(source, editing);
  if (files === undefined)
    return refuse(
      root,
      addresses[0] ?? [],
      "Two changes would be written at one place.",
      "Change it by hand.",
    );
  return verify(source, files, wanted, { root, addresses });
}

function editedFiles(source: Source, editing: Editing): { path: string; text: string }[] | undefined {
  const files: { path: string; text: string }[] = [];
  for (const [path, edits] of editing.edits) {
    const before = source.files.get(path)?.text ?? "";
    const imports = editing.names.get(path)?.imports() ?? [];
    const text = applyEdits(before, [...edits, ...imports]);
    if (text === undefined) return undefined;
    if (text !== before) files.push({ path, text });
  }
  return files;
}

/** Reads back what was written: it must be the wanted model, to the last value. */
function verify(
  source: Source,
  files: readonly { readonly path: string; readonly text: string }[],
  wanted: Json,
  { root, addresses }: { readonly root: Traced; readonly addresses: readonly Address[] },
): EditedModel {
  const read = readData(withTexts(source, files));
  if ("refusals" in read) return read;
  const difference = isJson(read.data) ? findDifference(read.data, wanted) : [];
  if (difference === undefined) return { files };
  const isMeant = addresses.some((address) => address.every((step, index) => difference[index] === step));
  const name = formatAddress(difference);
  return isMeant
    ? refuse(root, difference, `${name} would not come out as it should.`, "Change it by hand.")
    : refuse(
        root,
        addresses[0] ?? [],
        `What stands here is used more than once: ${name} would change too.`,
        "Write the two apart first, or change both alike.",
      );
}

function withTexts(
  source: Source,
  files: readonly { readonly path: string; readonly text: string }[],
): Source {
  const changed = new Map<string, SourceFile>(source.files);
  const refusals: Refusal[] = [...source.refusals];
  for (const { path, text } of files) {
    const { tree, refusal } = parseFile(path, text);
    const imports = source.files.get(path)?.imports ?? new Map<string, string>();
    if (refusal !== undefined) refusals.push(refusal);
    changed.set(path, { path, text, tree, imports });
  }
  return { ...source, files: changed, refusals };
}

function refuse(root: Traced, address: Address, what: string, remedy: string): EditedModel {
  return { refusals: [{ place: locateIn(root, address), what, remedy }] };
}
