import type {
  Amps,
  Celsius,
  Deg,
  DegPerS,
  DegPerUs,
  Grams,
  Metres,
  Mm,
  Mps,
  Newtons,
  Nm,
  Percent,
  Seconds,
  Us,
  Volts,
} from "./quantity.ts";

/** How a unit is written: in ASCII for plain text (`us`, `deg`), or with its own sign where it has one (µs, °). */
export type UnitStyle = "ascii" | "symbol";

/** A quantity as text with its unit. Decimals left out are those usual for the unit. */
export type Format<Q extends number> = (value: Q, decimals?: number, style?: UnitStyle) => string;

/**
 * A finite number as plain decimal text: no locale, no grouping, no exponent below 1e21, never "-0". Decimals from 0
 * to 100; a tie goes away from zero, and it is the double's exact value that is rounded.
 */
export function formatNumber(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

/** As formatNumber, without zeros at the end of the fraction: 72.50 is "72.5", 72.00 is "72". */
export function formatTrimmed(value: number, decimals: number): string {
  const text = formatNumber(value, decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/** "1872.2 us" */
export const formatUs: Format<Us> = format(1, " us", " µs");
/** "72.7 %"; a radio's own decimals are decimalsOf its step. */
export const formatPercent: Format<Percent> = format(1, " %");
/** "-16.0 deg" */
export const formatDeg: Format<Deg> = format(1, " deg", "°");
/** "29.0 mm" */
export const formatMm: Format<Mm> = format(1, " mm");
/** "850 m" */
export const formatMetres: Format<Metres> = format(0, " m");
/** "2.50 s" */
export const formatSeconds: Format<Seconds> = format(2, " s");
/** "0.45 N m" */
export const formatNm: Format<Nm> = format(2, " N m", " N·m");
/** "17.0 m/s" */
export const formatMps: Format<Mps> = format(1, " m/s");
/** "375 deg/s" */
export const formatDegPerS: Format<DegPerS> = format(0, " deg/s", "°/s");
/** "0.090 deg/us" */
export const formatDegPerUs: Format<DegPerUs> = format(3, " deg/us", "°/µs");
/** "6.0 V" */
export const formatVolts: Format<Volts> = format(1, " V");
/** "3.1 A" */
export const formatAmps: Format<Amps> = format(1, " A");
/** "152 N" */
export const formatNewtons: Format<Newtons> = format(0, " N");
/** "42 g" */
export const formatGrams: Format<Grams> = format(0, " g");
/** "31 degC" */
export const formatCelsius: Format<Celsius> = format(0, " degC", " °C");

// Says to bundlers that a format which nobody uses may be left out.
/* @__NO_SIDE_EFFECTS__ */
function format<Q extends number>(usual: number, ascii: string, symbol = ascii): Format<Q> {
  return (value, decimals = usual, style = "ascii") =>
    formatNumber(value, decimals) + (style === "ascii" ? ascii : symbol);
}
