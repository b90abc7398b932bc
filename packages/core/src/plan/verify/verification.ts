/** What as-built readings say about a plan. */
export interface Verification {
  /** First digits of the plan's fingerprint and of what the as-built file says that it was measured on. */
  readonly revision: { readonly ofPlan: string; readonly measured: string; readonly same: boolean };
  /** Every line of the plan that can be measured, measured or not: pulses and deflections channel by channel, then matched sides. */
  readonly verdicts: readonly LineVerdict[];
  /** What would explain the differences, the likeliest first; empty where nothing differs or no one cause explains them. */
  readonly causes: readonly Cause[];
  /** What the as-built file states twice or the plan does not have, one sentence each. */
  readonly strays: readonly string[];
  /** Something was measured, nothing differs, nothing is stray, and it was measured on this plan. */
  readonly passed: boolean;
}

/** How a line came out. `cannotTell`: the doubt of the reading reaches across what is allowed. */
export type Outcome = "agrees" | "differs" | "cannotTell" | "notMeasured";

/** What was found on one line. */
export type LineVerdict = PulseVerdict | DeflectionVerdict | MatchVerdict;

/** Which line of a channel. */
export type LinePlace = ChannelPlace | SettingPlace;

/** A value that a channel has once. */
export interface ChannelPlace {
  readonly kind: "limitLow" | "limitHigh" | "sweptLow" | "sweptHigh" | "neutral" | "failsafe" | "powerUp";
}

/** A setting of a channel, as the plan names it. */
export interface SettingPlace {
  readonly kind: "setting";
  readonly control: string;
  readonly detent?: string;
  readonly stick?: -1 | 1;
  readonly when?: Readonly<Record<string, string>>;
  readonly surface: string;
}

/** A pulse as read against the plan's. */
export interface PulseVerdict {
  readonly quantity: "pulse";
  readonly channel: number;
  readonly place: LinePlace;
  /** Lowest and highest pulse that is right, the same where it is one. */
  readonly expectedUs: readonly [number, number];
  /** How far outside is still right: half a step of the radio and 1 us. */
  readonly withinUs: number;
  readonly readUs?: number;
  /** From what is expected to what was read; 0 inside. */
  readonly byUs?: number;
  /** No pulse at all is right there, and there was none. */
  readonly silent?: true;
  /** The pulse read lies outside what is safe for the servo. */
  readonly unsafe?: true;
  readonly outcome: Outcome;
}

/** A deflection as read against the plan's. */
export interface DeflectionVerdict {
  readonly quantity: "deflection";
  readonly channel: number;
  readonly place: SettingPlace;
  readonly expectedDeg: number;
  /** Twice the combined standard doubt of what was predicted and what was read; absent where the plan states no doubt. */
  readonly withinDeg?: number;
  readonly readDeg?: number;
  /** From what is expected to what was read. */
  readonly byDeg?: number;
  readonly outcome: Outcome;
}

/** Left against right at one setting, from the deflections read on both. */
export interface MatchVerdict {
  readonly quantity: "match";
  readonly group: string;
  readonly surfaces: readonly [string, string];
  /** The setting, as the first surface has it. */
  readonly place: SettingPlace;
  readonly withinDeg: number;
  /** Expanded doubt of the difference, k = 2. */
  readonly doubtDeg: number;
  /** First minus second. */
  readonly byDeg?: number;
  readonly outcome: Outcome;
}

/** The mistakes that `verify` knows how to recognise. */
export type CauseKind =
  | "otherRevision"
  | "testerOffset"
  | "otherScale"
  | "otherEndPoints"
  | "wrongColumn"
  | "sidesSwapped"
  | "channelsSwapped"
  | "wrongChannel"
  | "trimLeftIn"
  | "directionReversed"
  | "limitsSwapped"
  | "minusSign"
  | "detentsSwapped"
  | "otherDetent"
  | "notEntered"
  | "failsafeNotSet"
  | "digitsSwapped"
  | "decimalPoint"
  | "limitTooNarrow"
  | "limitTooWide"
  | "centreShifted"
  | "linkageReversed"
  | "armToothOut"
  | "zeroOff"
  | "leverOther"
  | "readingSign"
  | "readingsSwapped"
  /** None of the others: one value is simply another. */
  | "otherValue";

/** One slip or fault that alone would give every reading it is held against. */
export interface Cause {
  readonly kind: CauseKind;
  /** The channels whose differences it explains; `all` where nothing else differs. */
  readonly channels: readonly number[];
  readonly all: boolean;
  readonly message: string;
  readonly do: string;
  /** The numbers of the message; the unit is in the key. */
  readonly numbers: Readonly<Record<string, number>>;
}
