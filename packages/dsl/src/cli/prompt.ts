/** Asks a person one question at a time. */
export interface Prompt {
  /**
   * The line that was typed, once `problemWith` finds nothing wrong with it; undefined where the person breaks off or nothing
   * more comes.
   */
  readonly ask: (
    message: string,
    problemWith: (line: string) => string | undefined,
  ) => Promise<string | undefined>;
}
