import { visibleText } from "../render/visible-text.ts";
import { alignLists } from "../source/align-lists.ts";

/** The lines that differ between two texts, "-" before the old and "+" before the new, under the number of the first. */
export function lineDiff(before: string, after: string): readonly string[] {
  const [old, now] = [before.split("\n"), after.split("\n")];
  return alignLists(old, now).flatMap(({ oldStart, oldEnd, newStart, newEnd }) => [
    `@ line ${newStart + 1}`,
    ...old.slice(oldStart, oldEnd).map((line) => `-${shown(line)}`),
    ...now.slice(newStart, newEnd).map((line) => `+${shown(line)}`),
  ]);
}

function shown(line: string): string {
  return visibleText(line.replace(/\r$/, "").replaceAll("\t", "  "));
}
