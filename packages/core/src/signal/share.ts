/**
 * The pulse, microseconds, of a share of the way between two limits: -100 is the first, +100 the second, 0 half-way. Limits may
 * stand the wrong way round or together; a share past 100 goes past them. The same bits as by the scale of `shareScale`.
 */
export function shareToPulse([lowUs, highUs]: readonly [number, number], sharePercent: number): number {
  return (lowUs + highUs) / 2 + (sharePercent * ((highUs - lowUs) / 2)) / 100;
}

/** The share of a pulse between two limits, percent: the inverse of `shareToPulse`. Undefined where the limits are one. */
export function pulseToShare(
  [lowUs, highUs]: readonly [number, number],
  pulseUs: number,
): number | undefined {
  return lowUs === highUs ? undefined : ((pulseUs - (lowUs + highUs) / 2) * 100) / ((highUs - lowUs) / 2);
}
