/**
 * The one of `known` that `name` is most likely a misspelling of: the fewest edits, at most one for every three letters
 * and at least one allowed; the first of equals; undefined where none is that near.
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  let nearest: string | undefined;
  let fewest = Math.max(1, Math.floor(name.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= fewest) continue;
    const edits = countEdits(name.toLowerCase(), candidate.toLowerCase());
    if (edits < fewest) {
      fewest = edits;
      nearest = candidate;
    }
  }
  return nearest;
}

/** Letters put in, left out, changed, or swapped with their neighbour (optimal string alignment distance). */
export function countEdits(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const change = from[row - 1] === to[column - 1] ? 0 : 1;
      let edits = Math.min(at(last, column) + 1, at(current, column - 1) + 1, at(last, column - 1) + change);
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) edits = Math.min(edits, at(beforeLast, column - 2) + 1);
      current.push(edits);
    }
    beforeLast = last;
    last = current;
  }
  return at(last, to.length);
}

const at = (row: readonly number[], column: number): number => row[column] ?? Number.POSITIVE_INFINITY;
