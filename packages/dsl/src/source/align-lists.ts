/** How one list becomes another: `old` items up to `oldEnd` become `new` items up to `newEnd`. Equal items lie in no gap. */
export interface Gap {
  readonly oldStart: number;
  readonly oldEnd: number;
  readonly newStart: number;
  readonly newEnd: number;
}

/** The gaps between the items that two lists have in common, as many in common as possible. Items are compared by `===`. */
export function alignLists(old: readonly string[], wanted: readonly string[]): Gap[] {
  const gaps: Gap[] = [];
  let [oldStart, newStart] = [0, 0];
  const close = (oldEnd: number, newEnd: number) => {
    if (oldEnd > oldStart || newEnd > newStart) gaps.push({ oldStart, oldEnd, newStart, newEnd });
    [oldStart, newStart] = [oldEnd + 1, newEnd + 1];
  };
  for (const [i, j] of commonItems(old, wanted)) close(i, j);
  close(old.length, wanted.length);
  return gaps;
}

/** Index pairs of a longest common subsequence, rising. */
function commonItems(old: readonly string[], wanted: readonly string[]): [number, number][] {
  const width = wanted.length + 1;
  const lengths = new Uint32Array((old.length + 1) * width);
  const at = (i: number, j: number) => lengths[i * width + j] ?? 0;
  for (let i = old.length - 1; i >= 0; i -= 1)
    for (let j = wanted.length - 1; j >= 0; j -= 1)
      lengths[i * width + j] =
        old[i] === wanted[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const pairs: [number, number][] = [];
  let [i, j] = [0, 0];
  while (i < old.length && j < wanted.length) {
    if (old[i] === wanted[j]) {
      pairs.push([i, j]);
      [i, j] = [i + 1, j + 1];
    } else if (at(i + 1, j) >= at(i, j + 1)) i += 1;
    else j += 1;
  }
  return pairs;
}
