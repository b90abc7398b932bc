import type { Prompt } from "./prompt.ts";

/** An answer of a script that is none. */
export interface ScriptFault {
  /** Counted from 1. */
  readonly line: number;
  readonly problem: string;
}

/**
 * Answers from lines of text, as if they were typed; lines that begin with # are remarks. Where an answer is none, or no more
 * come, nothing more is answered.
 */
export function scriptPrompt(text: string): Prompt & { readonly fault: () => ScriptFault | undefined } {
  const lines = text
    .replace(/^\uFEFF/, "")
    .replace(/\r?\n$/, "")
    .split(/\r?\n/)
    .map((line, index) => ({ line, number: index + 1 }))
    .filter(({ line }) => !line.trimStart().startsWith("#"));
  let fault: ScriptFault | undefined;
  return {
    fault: () => fault,
    ask: async (_message, problemWith) => {
      const next = lines.shift();
      if (next === undefined) return undefined;
      const problem = problemWith(next.line);
      if (problem === undefined) return next.line;
      fault = { line: next.number, problem };
      lines.splice(0);
      return undefined;
    },
  };
}
