/** `error`: do not enter this plan; `warning`: look at it first; `note`: worth knowing. */
export type Severity = "error" | "warning" | "note";

/** Something wrong or worth knowing about a model, as plain data. */
export interface Finding {
  /** Stable kebab-case name of the kind of finding. */
  readonly code: string;
  readonly severity: Severity;
  /**
   * Address in the model, as `formatAddress` writes it; empty for the model as a whole. `file:line:column` where the file does not
   * compile, so that there is no model.
   */
  readonly at: string;
  /** What, where, number and limit, in one or two sentences. */
  readonly message: string;
  /** What the builder can do about it; empty where a note asks for nothing. */
  readonly do: string;
  /** The numbers of the message; the unit is in the key. */
  readonly numbers: Readonly<Record<string, number>>;
}
