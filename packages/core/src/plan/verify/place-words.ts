import type { ChannelPlace, LinePlace, SettingPlace } from "./verification.ts";

const channelPlaces: Readonly<Record<ChannelPlace["kind"], string>> = {
  limitLow: "the low limit",
  limitHigh: "the high limit",
  sweptLow: "the lowest pulse swept",
  sweptHigh: "the highest pulse swept",
  neutral: "the value at rest",
  failsafe: "failsafe",
  powerUp: "the pulse at power-up",
};

/** "the low limit", "flap at landing", "roll at +1 with phase at thermal": a place as sentences name it. */
export function namePlace(place: LinePlace): string {
  if (place.kind !== "setting") return channelPlaces[place.kind];
  const { control, detent, stick = 1, when = {} } = place;
  const own = `${control} at ${detent ?? (stick === 1 ? "+1" : "-1")}`;
  const others = Object.entries(when).map(([selector, at]) => `${selector} at ${at}`);
  return others.length === 0 ? own : `${own} with ${others.join(" and ")}`;
}

/** The same text for the same setting of the same surface, and for no other. */
export function settingKey(setting: Omit<SettingPlace, "kind">): string {
  return `${setting.surface}\n${positionKey(setting)}`;
}

/** The same text for the same control position, whatever the surface. */
export function positionKey({
  control,
  detent,
  stick,
  when = {},
}: Omit<SettingPlace, "kind" | "surface">): string {
  const others = Object.entries(when).sort(([a], [b]) => (a < b ? -1 : 1));
  return JSON.stringify([control, detent ?? stick ?? 0, others]);
}
