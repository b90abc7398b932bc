import { dirname, relative } from "node:path";

/**
 * One sentence for a model file that did not run: what was thrown, its first line only, and the file and line where that is known.
 * @param path as the user gave it
 * @param fullPath the same, absolute
 */
export function throwSentence(path: string, fullPath: string, error: unknown): string {
  const { message, stack } = partsOf(error);
  const missing = /^Cannot find (?:module|package) '([^']+)'/.exec(message);
  const importer = /Require stack:\s*- (.+)/.exec(message)?.[1] ?? /imported from (.+)$/m.exec(message)?.[1];
  if (missing !== null) {
    const from = importer === undefined ? path : nameOf(importer, path, fullPath);
    return `${from} imports "${missing[1]}", which cannot be found.`;
  }
  const syntax = /^Error transforming (.+?): (.*?) \((\d+):(\d+)\)$/.exec(message);
  if (syntax !== null) {
    const [, file = "", what = "", line = "", column = ""] = syntax;
    return `${nameOf(file, path, fullPath)} is no valid code: line ${line}, column ${column}: ${what}.`;
  }
  const place = placeOf(stack);
  const where = place === undefined ? path : `${nameOf(place.file, path, fullPath)}, line ${place.line},`;
  const what = callsNothing.test(message)
    ? "a function called there does not exist; is its name spelt as in the file it is imported from?"
    : firstLine(message);
  return `${where} threw an error: ${what === "" ? "without a message" : what}${/[.!?]$/.test(what) ? "" : "."}`;
}

function partsOf(error: unknown): { readonly message: string; readonly stack: string } {
  try {
    // Errors of another realm are no instances of this one's Error.
    const { message, stack } = (typeof error === "object" && error !== null ? error : {}) as Partial<Error>;
    if (typeof message === "string") return { message, stack: String(stack ?? "") };
    return { message: String(error), stack: "" };
  } catch {
    return { message: "", stack: "" };
  }
}

/** What calling an imported name that is not exported comes to, once imports are made calls through their module. */
const callsNothing = /^Cannot read properties of undefined \(reading 'call'\)$/;

interface Place {
  readonly file: string;
  readonly line: string;
}

const frame = /^\s+at (?:.*\()?(?:file:\/\/)?([^()]+\.[cm]?[jt]s):(\d+):\d+\)?$/;

/** The topmost line of a stack in a file of the user's; where all seem to be hingeline's own, the topmost of any. */
function placeOf(stack: string): Place | undefined {
  const places = stack.split("\n").flatMap((line): Place[] => {
    const [, file, number] = frame.exec(line) ?? [];
    return file === undefined ||
      number === undefined ||
      file.includes("node_modules") ||
      file.startsWith("node:")
      ? []
      : [{ file, line: number }];
  });
  return places.find(({ file }) => !ownCode.test(file)) ?? places[0];
}

/** Where hingeline lies when it is worked on; installed, it is below node_modules. */
const ownCode = /[\\/]packages[\\/](?:core|dsl)[\\/](?:src|dist)[\\/]/;

/** A file's name as the user would write it, beside the path given. */
function nameOf(file: string, path: string, fullPath: string): string {
  if (file === fullPath) return path;
  const beside = relative(dirname(fullPath), file);
  return beside.startsWith("..") ? file : beside;
}

function firstLine(text: string): string {
  return text.split("\n", 1)[0]?.trim() ?? "";
}
