import { decimalsOf, formatNumber, type PlanRadio, type Position, typedPercent } from "@hingeline/core";

/** Numbers of a plan as text. Percents always carry their sign, because a lost minus is the costliest slip at the bench. */
export interface Numbers {
  /** A percent that is on the radio's grid: "+72.7", "0.0". */
  readonly percent: (percent: number) => string;
  /** What is typed for a position, the share where limits scale. */
  readonly typed: (position: Pick<Position, "percent" | "sharePercent">) => string;
  /** Whether positions are entered as shares between the limits rather than as percents. */
  readonly byShare: boolean;
  /** A percent before rounding, one decimal more. */
  readonly exactPercent: (percent: number) => string;
}

/** Percents with the decimals of this radio's step. */
export function numbersOf({ stepPercent, endPoints }: Pick<PlanRadio, "stepPercent" | "endPoints">): Numbers {
  const decimals = decimalsOf(stepPercent);
  return {
    byShare: endPoints === "scale",
    percent: (percent) => signed(percent, decimals),
    typed: (position) => signed(typedPercent(position, { endPoints }), decimals),
    exactPercent: (percent) => signed(percent, decimals + 1),
  };
}

/** What is typed, as text, and where limits scale what it is: a limit is a percent there, every position a share. */
export function withKind(text: string, kind: "limit" | "position", { byShare }: Numbers): string {
  return byShare ? `${text} ${kind === "limit" ? "%    " : "share"}` : text;
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
