/** Colours for a terminal. A colour only repeats what the words say. */
export interface Paint {
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
}

/** Escape sequences of ECMA-48 (SGR), or none. */
export function paintFor(colour: boolean): Paint {
  const sgr = (on: number, off: number) => (text: string) =>
    colour && text !== "" ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  return { error: sgr(31, 39), warning: sgr(33, 39), strong: sgr(1, 22), faint: sgr(2, 22) };
}
