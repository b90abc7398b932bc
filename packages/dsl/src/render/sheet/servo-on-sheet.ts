import {
  type Edit,
  formatNumber,
  formatTrimmed,
  type PlanChannel,
  type ServoDescription,
  type Setting,
  type SetupPlan,
} from "@hingeline/core";
import { signed } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";

/** A servo with all that the plan says about it. */
export interface SheetServo {
  readonly described: ServoDescription;
  readonly channel: PlanChannel;
  /** Of the channel, those that move this servo's surface. */
  readonly settings: readonly Setting[];
  /** Unique on the page; letters, digits and hyphens only. */
  readonly key: string;
}

/** Every servo that the plan has a channel for, in the order of the model. */
export function servosOnSheet(
  { channels }: SetupPlan,
  described: readonly ServoDescription[],
): readonly SheetServo[] {
  return described.flatMap((one, index) => {
    const channel = channels.find(({ servos }) => servos.includes(one.id));
    if (channel === undefined) return [];
    const settings = channel.settings.filter(({ surface }) => surface === one.surface);
    return [{ described: one, channel, settings, key: `servo-${index + 1}` }];
  });
}

/** "42.0°", "-1.5°": a deflection with its sign where it is not level. */
export function degreesText(deflectionDeg: number, decimals = 1): string {
  return `${signed(deflectionDeg, decimals)}°`;
}

/** "1235.4 µs" */
export function microseconds(pulseUs: number): string {
  return `${formatNumber(pulseUs, 1)}\u00a0µs`;
}

/** What tells a setting from the others of its servo, and matches it with its twin on another. */
export function settingKey({
  control,
  detent,
  stick,
  when = {},
}: Pick<Edit, "control" | "detent" | "stick" | "when">): string {
  return JSON.stringify([control, detent ?? stick, Object.entries(when).sort()]);
}

/** "landing", "roll -1", "thermal, roll +1": a setting where there is little room. */
export function shortSetting({
  control,
  detent,
  stick,
  when = {},
}: Pick<Setting, "control" | "detent" | "stick" | "when">): string {
  const own = detent ?? `${control} ${stick === 1 ? "+1" : "-1"}`;
  return [...Object.values(when), own].join(", ");
}

/** "flap landing, roll +1.04 with trim": a combination where there is little room. */
export function shortState(state: Readonly<Record<string, string | number>>): string {
  const parts = Object.entries(state).map(([control, position]) => {
    if (typeof position === "string") return `${visibleText(control)} ${visibleText(position)}`;
    const sign = position > 0 ? "+" : "";
    return `${visibleText(control)} ${sign}${formatTrimmed(position, 3)}${Math.abs(position) > 1 ? " with trim" : ""}`;
  });
  return parts.length === 0 ? "all at rest" : parts.join(", ");
}
