import { us } from "@hingeline/core";
import { type SheetServo, settingKey } from "./servo-on-sheet.ts";

/** Both servos at one place of one control's way: what each gives there. */
export interface Together {
  readonly pulseUs: number;
  readonly differenceDeg: number;
}

/** Both are asked for the same where they are asked for one extension and a track of each makes degrees of it. */
const sameDeg = 0.01;

/** Along the control that moves both furthest while it asks both for the same. */
export function longestWay(first: SheetServo, second: SheetServo): readonly Together[] {
  const twins = new Map(second.settings.map((setting) => [settingKey(setting), setting]));
  const ways = new Map<string, { one: number; other: number }[]>();
  for (const setting of first.settings) {
    const twin = twins.get(settingKey(setting));
    const wanted = setting.wanted?.deflectionDeg;
    if (
      twin === undefined ||
      wanted === undefined ||
      Math.abs((twin.wanted?.deflectionDeg ?? NaN) - wanted) > sameDeg
    )
      continue;
    const way = ways.get(setting.control) ?? [];
    if (way.length === 0 && setting.stick !== undefined)
      way.push({ one: first.channel.neutral.pulseUs, other: second.channel.neutral.pulseUs });
    way.push({ one: setting.enter.pulseUs, other: twin.enter.pulseUs });
    ways.set(setting.control, way);
  }
  const spanOf = (way: readonly { one: number }[]) =>
    Math.max(...way.map(({ one }) => one)) - Math.min(...way.map(({ one }) => one));
  const [longest] = [...ways.values()].filter((way) => way.length > 1).sort((a, b) => spanOf(b) - spanOf(a));
  if (longest === undefined) return [];
  const stops = longest.toSorted((a, b) => a.one - b.one);
  return stops.flatMap((from, index) => {
    const to = stops[index + 1];
    if (to === undefined) return [];
    return Array.from({ length: 17 }, (_, step) => {
      const at = step / 16;
      const oneUs = from.one * (1 - at) + to.one * at;
      const otherUs = from.other * (1 - at) + to.other * at;
      const oneDeg = first.described.measured?.response.deflectionAt(us(oneUs));
      const otherDeg = second.described.measured?.response.deflectionAt(us(otherUs));
      return { pulseUs: oneUs, differenceDeg: (oneDeg ?? 0) - (otherDeg ?? 0) };
    });
  });
}
