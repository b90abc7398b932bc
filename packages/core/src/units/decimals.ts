/**
 * Decimals that a value with this doubt deserves, so that the doubt shows two significant digits where the first is
 * 1 or 2 and one otherwise: 0.26 gives 2, 0.6 gives 1, 7.1 gives 0. Never more than the two of JCGM 100 7.2.6; one
 * digit from 3 up is common practice, no source. Doubt in the unit of the value; undefined where it is not above
 * zero or not finite, so that a format's own default applies.
 */
export function decimalsFor(doubt: number): number | undefined {
  if (!Number.isFinite(doubt) || doubt <= 0) return undefined;
  // Two digits first: 0.0996 is 0.10 and shows as such.
  const rounded = doubt.toExponential(1);
  const exponent = Number(rounded.slice(rounded.indexOf("e") + 1));
  const digits = Number(rounded.charAt(0)) <= 2 ? 2 : 1;
  return Math.min(MOST_DECIMALS, Math.max(0, digits - 1 - exponent));
}

/**
 * Decimals in the shortest decimal text of a finite number: 0.25 has 2, 5 has 0, 1e-7 has 7. At most 100, which is
 * what toFixed takes.
 */
export function decimalsOf(value: number): number {
  const [mantissa = "", exponent = "0"] = String(value).split("e");
  const [, fraction = ""] = mantissa.split(".");
  return Math.min(100, Math.max(0, fraction.length - Number(exponent)));
}

/**
 * The whole multiple of a step (above 0) nearest to a value, a tie towards plus infinity, with the decimals of the step: 0.3,
 * not 0.1 * 3, and never -0. Any unit, the same for both.
 */
export function roundToStep(value: number, step: number): number {
  return timesStep(Math.round(value / step), step);
}

/** So many steps (a whole number of them), with the decimals of the step: 0.3, not 0.1 * 3, and never -0. */
export function timesStep(multiple: number, step: number): number {
  return Number((multiple * step).toFixed(decimalsOf(step))) + 0;
}

/** A picometre or a millionth of a millionth of a degree is nothing anyone enters. */
const MOST_DECIMALS = 12;
