// Control and format characters, which include every bidirectional mark, line separators and stray surrogates.
const invisible = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;

/**
 * Text from a model or plan as it may be printed: on one line, and with nothing in it that a reader cannot see. Characters that
 * move the cursor, change the direction of writing or take no room stand as `\u{202E}`.
 */
export function visibleText(text: string): string {
  return text.replaceAll(invisible, (character) => {
    const code = character.codePointAt(0) ?? 0;
    return `\\u{${code.toString(16).toUpperCase().padStart(4, "0")}}`;
  });
}
