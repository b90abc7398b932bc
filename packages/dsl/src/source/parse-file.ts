import { ts } from "ts-morph";
import { placeAt } from "./place-of.ts";
import type { Refusal } from "./source.ts";

/** One mebibyte: a hundred times a large model. */
const mostCharacters = 1024 * 1024;

/**
 * The syntax tree of a file's text and its first fault, if it has one. A text that is too long or too deeply nested has an
 * empty tree. Offsets in the tree are those of the text, a byte order mark included.
 */
export function parseFile(
  path: string,
  text: string,
): { readonly tree: ts.SourceFile; readonly refusal?: Refusal } {
  if (text.length > mostCharacters)
    return refused(
      path,
      `The file has ${text.length} characters; ${mostCharacters} is the most that is read.`,
    );
  let tree: ts.SourceFile;
  try {
    tree = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  } catch (error) {
    // The parser calls itself for each level of brackets.
    if (!(error instanceof RangeError)) throw error;
    return refused(path, "The file is nested too deeply to be read.");
  }
  const fault = faultOf(tree);
  if (fault === undefined) return { tree };
  const end = Math.min(text.length, fault.start + fault.length);
  return {
    tree,
    refusal: {
      place: placeAt(tree, Math.min(fault.start, end), end),
      what: `The file is no valid code: ${ts.flattenDiagnosticMessageText(fault.messageText, " ")}`,
      remedy: "Correct it.",
    },
  };
}

/** The parser keeps what it found with the tree, under a name that its types do not show; a whole program would parse again. */
function faultOf(tree: ts.SourceFile): ts.DiagnosticWithLocation | undefined {
  const { parseDiagnostics = [] } = tree as ts.SourceFile & {
    readonly parseDiagnostics?: readonly ts.DiagnosticWithLocation[];
  };
  return parseDiagnostics[0];
}

function refused(path: string, what: string): { readonly tree: ts.SourceFile; readonly refusal: Refusal } {
  const tree = ts.createSourceFile(path, "", ts.ScriptTarget.Latest, true);
  return { tree, refusal: { place: placeAt(tree, 0, 0), what, remedy: "Split it into smaller parts." } };
}
