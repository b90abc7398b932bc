import { differs } from "./pair-up.ts";
import { type PlanChange, placeOf, type SettingAt } from "./plan-change.ts";
import type { PlanChannel, SetupPlan } from "./setup-plan.ts";

/** What has to be read back and measured again because of changes. */
export interface VerifyAgain {
  /** In the order of the plan. */
  readonly channels: readonly ChannelCheck[];
  /** Matched groups whose sides have to be compared again. */
  readonly groups: readonly string[];
}

/** What to measure again on one channel. */
export interface ChannelCheck {
  readonly channel: number;
  /** Then nothing else is listed. */
  readonly everything: boolean;
  readonly parts: readonly ("limits" | "transits" | "failsafe")[];
  readonly settings: readonly SettingAt[];
}

type Part = ChannelCheck["parts"][number];

/** What has to be verified again once `changes` have led to the plan `after`. */
export function verifyAgain(changes: readonly PlanChange[], after: SetupPlan): VerifyAgain {
  const channels = after.channels
    .map((channel) => checkOf(channel, changes, after))
    .filter(({ everything, parts, settings }) => everything || parts.length > 0 || settings.length > 0);
  const moved = new Set(
    channels.flatMap(({ channel, everything, settings }) =>
      everything ? surfacesOf(after, channel) : settings.map(({ surface }) => surface),
    ),
  );
  const groups = after.matches.filter(({ surfaces }) => surfaces.some((surface) => moved.has(surface)));
  return { channels, groups: [...new Set(groups.map(({ group }) => group))] };
}

function checkOf(plan: PlanChannel, changes: readonly PlanChange[], { radio }: SetupPlan): ChannelCheck {
  const { channel } = plan;
  const parts = new Set<Part>();
  const moved: SettingAt[] = [];
  for (const change of changes) {
    if (change.kind === "radio") return everythingOf(channel);
    if (change.kind === "setting") {
      if (change.place.channel === channel) moved.push(change.place);
      continue;
    }
    if (!("channel" in change) || change.channel !== channel) continue;
    switch (change.kind) {
      case "channel":
      case "label":
      case "direction":
      case "curve":
        return everythingOf(channel);
      case "safe":
        parts.add("limits");
        break;
      case "value":
        if (change.value === "failsafe") parts.add("failsafe");
        // All positions build on the value at rest, and lie between the limits where those scale.
        else if (change.value === "neutral" || radio.endPoints === "scale") return everythingOf(channel);
        else parts.add("limits");
        break;
      case "adds":
        moved.push(...change.places.map(({ place }) => place));
        break;
      case "transit":
        parts.add("transits");
    }
  }
  const settings = plan.settings
    .map((setting) => placeOf(channel, setting))
    .filter((setting) => moved.some((place) => !differs(place, setting) || buildsOn(place, setting)));
  return { channel, everything: false, parts: [...parts], settings };
}

function everythingOf(channel: number): ChannelCheck {
  return { channel, everything: true, parts: [], settings: [] };
}

/** Whether a setting counts only where the control stands at this place. */
function buildsOn({ control, detent }: SettingAt, { when = {} }: SettingAt): boolean {
  return detent !== undefined && when[control] === detent;
}

function surfacesOf({ channels }: SetupPlan, channel: number): readonly string[] {
  return channels
    .filter((one) => one.channel === channel)
    .flatMap(({ settings }) => settings.map(({ surface }) => surface));
}
