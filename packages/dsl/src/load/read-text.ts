import { resolve } from "node:path";
import { codeOf, type Files } from "./files.ts";
import { inputName } from "./input-name.ts";
import { type LoadProblem, problem } from "./load-problem.ts";

/** Sixteen mebibytes: a thousand times a large model. */
const mostBytes = 16 * 1024 * 1024;

/** The text of a file, or of standard input for "-": UTF-8 with or without a byte order mark, not empty. */
export async function readText(
  path: string,
  files: Files,
): Promise<{ readonly text: string } | { readonly problem: LoadProblem }> {
  const name = inputName(path);
  let bytes: Uint8Array;
  try {
    bytes = path === "-" ? await files.readStdin() : await files.readFile(resolve(files.cwd, path));
  } catch (error) {
    return { problem: readProblem(path, error) };
  }
  if (bytes.length > mostBytes)
    return problem("too-large", `${name} has ${bytes.length} bytes; ${mostBytes} is the most that is read.`);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return problem("not-text", `${name} is not UTF-8 text.`);
  }
  return text.trim() === "" ? problem("empty", `${name} is empty.`) : { text };
}

/** The sentence for a file that cannot be read. */
function readProblem(path: string, error: unknown): LoadProblem {
  switch (codeOf(error)) {
    case "ENOENT":
    case "ENOTDIR":
      return { kind: "not-found", message: `${path} does not exist.` };
    case "EISDIR":
      return { kind: "folder", message: `${path} is a folder, not a file.` };
    case "EACCES":
    case "EPERM":
      return { kind: "unreadable", message: `${path} may not be read by this user.` };
    default:
      return { kind: "unreadable", message: `${path} cannot be read (${codeOf(error) ?? String(error)}).` };
  }
}
