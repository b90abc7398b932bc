/** The response's pulses where a line through them looks smooth: its knots and some between. */
export function samplePulses(knots: readonly number[]): number[] {
  const parts = Math.max(2, Math.ceil(48 / Math.max(1, knots.length - 1)));
  return knots.flatMap((knot, index) => {
    const next = knots[index + 1];
    if (next === undefined) return [knot];
    return Array.from({ length: parts }, (_, part) => knot + ((next - knot) * part) / parts);
  });
}
