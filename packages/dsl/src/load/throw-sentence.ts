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
  const syntax = /^(?:ParseError|SyntaxError): (.*?)\s*\n\s*(.+):(\d+):(\d+)$/.exec(message);
  if (syntax !== null) {
    const [, what = "", file = "", line = "", column = ""] = syntax;
    // The parser counts columns from 0.
    return `${nameOf(file, path, fullPath)} is no valid code: line ${line}, column ${Number(column) + 1}: ${what.trim()}.`;
  }
  const place = placeOf(stack);
  const where = place === undefined ? path : `${nameOf(place.file, path, fullPath)}, line ${place.line},`;
  const what = firstLine(message).replace(/\(0, ?\w+\.(\w+)\)|\(0 , ?\w+\.(\w+)\)/g, "$1$2");
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

/** The topmost line of a stack that is in a file of the user's. */
function placeOf(stack: string): { readonly file: string; readonly line: string } | undefined {
  for (const line of stack.split("\n")) {
    const [, file, number] =
      /^\s+at (?:.*\()?(?:file:\/\/)?([^():]*(?::\\)?[^():]+\.[cm]?[jt]s):(\d+):\d+\)?$/.exec(line) ?? [];
    if (file !== undefined && number !== undefined && isUsers(file)) return { file, line: number };
  }
  return undefined;
}

function isUsers(file: string): boolean {
  return !/node_modules|^node:|[\\/]packages[\\/](?:core|dsl)[\\/](?:src|dist)[\\/]/.test(file);
}

/** A file's name as the user would write it, beside the path given. */
function nameOf(file: string, path: string, fullPath: string): string {
  if (file === fullPath) return path;
  const beside = relative(dirname(fullPath), file);
  return beside.startsWith("..") ? file : beside;
}

function firstLine(text: string): string {
  return text.split("\n", 1)[0]?.trim() ?? "";
}
