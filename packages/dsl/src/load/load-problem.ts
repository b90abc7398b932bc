import type { Refusal } from "../source/source.ts";

/** Why a file gives no data. `message` is one sentence for a person, with the file's name in it. */
export interface LoadProblem {
  readonly kind:
    | "not-found"
    | "folder"
    | "unreadable"
    | "unknown-kind"
    | "empty"
    | "too-large"
    | "not-text"
    | "bad-json"
    | "throws"
    | "no-default"
    | "bad-default"
    | "not-read"
    | "not-a-model"
    | "not-a-plan"
    | "not-as-built";
  readonly message: string;
  /** For a file that is only read: what is not read in it, where. */
  readonly refusals?: readonly Refusal[];
}

/** A problem in the shape in which loaders return it. */
export function problem(kind: LoadProblem["kind"], message: string): { readonly problem: LoadProblem } {
  return { problem: { kind, message } };
}
