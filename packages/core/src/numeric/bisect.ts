/** The root of `f` between `a` and `b`, where its signs differ, not at `a` itself; to neighbouring doubles. */
export function bisect(f: (x: number) => number, a: number, b: number): number {
  const positiveAtA = f(a) > 0;
  let near = a;
  let far = b;
  for (;;) {
    const middle = near + (far - near) / 2;
    if (middle === near || middle === far) return near;
    const value = f(middle);
    if (value === 0) return middle;
    if (value > 0 === positiveAtA) near = middle;
    else far = middle;
  }
}
