import { decimalsOf, formatNumber, type PlanRadio, type Position, typedPercent } from "@hingeline/core";

/** Numbers of a plan as text. Percents always carry their sign, because a lost minus is the costliest slip at the bench. */
export interface Numbers {
  /** A percent that is on the radio's grid: "+72.7", "0.0". */
  readonly percent: (percent: number) => string;
  /** What is typed for a position, the share where limits scale. */
  readonly typed: (position: Pick<Position, "percent" | "sharePercent">) => string;
  /** Whether positions are entered as shares between the limits rather than as percents. */
  readonly byShare: boolean;
  /** What a typed position is: "%", or "share" where limits scale. A limit is always a percent. */
  readonly positionUnit: "%" | "share";
  /** Whether what is typed has decimals. */
  readonly isFine: boolean;
  /** A percent before rounding, one decimal more. */
  readonly exactPercent: (percent: number) => string;
}

/** Percents with the decimals of this radio's step. */
export function numbersOf({ stepPercent, endPoints }: Pick<PlanRadio, "stepPercent" | "endPoints">): Numbers {
  const decimals = decimalsOf(stepPercent);
  return {
    byShare: endPoints === "scale",
    positionUnit: endPoints === "scale" ? "share" : "%",
    isFine: decimals > 0,
    percent: (percent) => signed(percent, decimals),
    typed: (position) => signed(typedPercent(position, { endPoints }), decimals),
    exactPercent: (percent) => signed(percent, decimals + 1),
  };
}

/** A limit, or a position between the limits. */
export type TypedKind = "limit" | "position";

/** What a limit or a position of this radio is: "%" or "share". */
export function unitOf(kind: TypedKind, { positionUnit }: Numbers): string {
  return kind === "limit" ? "%" : positionUnit;
}

/** What is typed, as text with its unit: "-57.0 %", "+94.9 share". */
export function withUnit(text: string, kind: TypedKind, numbers: Numbers): string {
  return `${text} ${unitOf(kind, numbers)}`;
}

/** A cell of a column that mixes limits and positions: with its unit where they differ in it, all numbers in line. */
export function withKind(text: string, kind: TypedKind, numbers: Numbers): string {
  return numbers.byShare ? `${text} ${unitOf(kind, numbers).padEnd("share".length)}` : text;
}

/** A number with its sign: "+13.9", "-0.1"; what rounds to zero has none. */
export function signed(value: number, decimals: number): string {
  const text = formatNumber(value, decimals);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** "1872.2 us" */
export function pulseText(pulseUs: number): string {
  return `${formatNumber(pulseUs, 1)} us`;
}
