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
    | "not-a-model"
    | "not-a-plan";
  readonly message: string;
}

/** A problem in the shape in which loaders return it. */
export function problem(kind: LoadProblem["kind"], message: string): { readonly problem: LoadProblem } {
  return { problem: { kind, message } };
}
