import type { Finding } from "../findings/finding.ts";
import type {
  CurvePoint,
  PercentPulse,
  PlanChannel,
  PlanRadio,
  Position,
  Setting,
  SetupPlan,
} from "./setup-plan.ts";

/**
 * One thing that differs between two plans, in the words of the plan. `before` and `after` are what the two say; one of them is absent
 * where only one plan says anything.
 */
export type PlanChange =
  | ({ readonly kind: "model" } & BeforeAfter<string>)
  | ({ readonly kind: "radio" } & BeforeAfter<PlanRadio>)
  /** The servos of a channel that is new, gone, or feeds others; nothing else is told of it. */
  | ({ readonly kind: "channel"; readonly channel: number } & BeforeAfter<readonly string[]>)
  /** The label on a servo: another label is another servo. */
  | ({ readonly kind: "label"; readonly channel: number; readonly servo: string } & BeforeAfter<string>)
  | ({ readonly kind: "direction"; readonly channel: number } & BeforeAfter<PlanChannel["direction"]>)
  | ({ readonly kind: "safe"; readonly channel: number } & BeforeAfter<PlanChannel["safeUs"]>)
  | ({
      readonly kind: "value";
      readonly channel: number;
      readonly value: ValueName;
    } & BeforeAfter<PercentPulse | Position>)
  | ({ readonly kind: "setting"; readonly place: SettingAt } & BeforeAfter<SettingValue>)
  /** What positions add to the value at rest, where that is all that changed of them. */
  | { readonly kind: "adds"; readonly channel: number; readonly places: readonly AddedPlace[] }
  | ({ readonly kind: "curve"; readonly channel: number } & BeforeAfter<readonly CurvePoint[]>)
  /** Seconds of a control's longest way. */
  | ({ readonly kind: "transit"; readonly channel: number; readonly control: string } & BeforeAfter<number>)
  | ({ readonly kind: "finding"; readonly code: string; readonly at: string } & BeforeAfter<Finding>)
  /** Parts with other numbers that nobody enters, as computed from the rest. */
  | { readonly kind: "computed"; readonly parts: readonly ComputedPart[] };

/** A value in the old and in the new plan; absent where that plan has none. */
export interface BeforeAfter<T> {
  readonly before?: T;
  readonly after?: T;
}

/** The values that a channel has once. */
export type ValueName = "lowLimit" | "highLimit" | "neutral" | "failsafe";

/** Which setting of which channel. */
export interface SettingAt extends Pick<Setting, "control" | "detent" | "stick" | "when" | "surface"> {
  readonly channel: number;
}

/** What a setting wants, what is entered for it, and what that gives. */
export interface SettingValue extends Position {
  readonly wantedDeg?: number;
  readonly throwMm?: number;
  readonly extensionMm?: number;
  readonly addPercent: number;
  readonly givesDeg?: number;
}

/** Percents that a setting adds to its channel's value at rest. */
export interface AddedPlace {
  readonly place: SettingAt;
  readonly before: number;
  readonly after: number;
}

/** A part of the document, or of one channel in it. */
export type ComputedPart =
  | { readonly part: keyof SetupPlan }
  | { readonly channel: number; readonly part: keyof PlanChannel };

/** Both sides of a change, without those that are undefined. */
export function sidesOf<T>(before: T | undefined, after: T | undefined): BeforeAfter<T> {
  return { ...(before === undefined ? {} : { before }), ...(after === undefined ? {} : { after }) };
}

/** Where a setting of a channel stands. */
export function placeOf(channel: number, { control, detent, stick, when, surface }: Setting): SettingAt {
  return {
    channel,
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    ...(when === undefined ? {} : { when }),
    surface,
  };
}
