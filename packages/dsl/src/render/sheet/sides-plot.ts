import { formatNumber, type SetupPlan, us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import type { Element } from "./element.ts";
import {
  label,
  levels,
  type Place,
  picture,
  pictureWidth,
  scaleOver,
  shortName,
  stroke,
} from "./plot-parts.ts";
import { samplePulses } from "./response-plot.ts";
import { degreesText, type SheetServo, settingKey } from "./servo-on-sheet.ts";

/** Both servos at one place of one control's way: what each gives there. */
interface Together {
  readonly pulseUs: number;
  readonly differenceDeg: number;
}

/**
 * Two servos over one another, level on level and down to the same side, each with its own pulse axis; below it how far they differ
 * on the way between what is entered, where both are asked for the same. Undefined unless both know degrees.
 */
export function sidesPlot(
  first: SheetServo,
  second: SheetServo,
  matches: SetupPlan["matches"],
  height: number,
): Element | undefined {
  const [one, other] = [first.described, second.described];
  if (one.measured === undefined || other.measured === undefined) return undefined;
  const ways = longestWay(first, second);
  const strip = ways.length === 0 ? 0 : Math.min(60, height * 0.33);
  const box = { left: 38, right: 330, top: 34, bottom: height - 20 - strip };
  const spanOf = ({ described }: SheetServo, pulseUs: number) =>
    (pulseUs - described.levelUs) * (described.rising ? 1 : -1);
  const ends = [first, second].flatMap((servo) =>
    (servo.described.measured?.response.pulses ?? []).map((pulseUs) => spanOf(servo, pulseUs)),
  );
  const x = scaleOver(ends, [box.left, box.right], 0.03);
  const y = scaleOver(
    [...one.measured.response.deflections, ...other.measured.response.deflections],
    [box.bottom, box.top],
    0.06,
  );
  const curve = (servo: SheetServo) => {
    const response = servo.described.measured?.response;
    return samplePulses(response?.knots ?? []).map(
      (pulseUs): Place => [x(spanOf(servo, pulseUs)), y(response?.deflectionAt(us(pulseUs)) ?? 0)],
    );
  };
  // Round pulses on either axis, so their ticks do not stand over one another.
  const pulseTicks = (servo: SheetServo, at: number) => {
    const { levelUs, rising } = servo.described;
    const pulses = x.domain().map((span) => levelUs + span * (rising ? 1 : -1));
    return scaleOver(pulses, [0, 1])
      .ticks(4)
      .map((pulseUs) => label(x(spanOf(servo, pulseUs)), at, formatNumber(pulseUs, 0), "middle"));
  };
  const id = `sides-${first.key}`;
  const names = [visibleText(one.id), visibleText(other.id)] as const;
  const worst = matches.find(({ surfaces }) =>
    [one.surface, other.surface].every((surface) => surfaces.includes(surface)),
  );
  const text =
    `${names[0]} as a full line with the pulses below, ${names[1]} dashed with the pulses above.` +
    (worst === undefined
      ? ""
      : ` They differ by ${formatNumber(worst.worstDeg, 2)}° at most on the way from ${visibleText(worst.between[0])} to ${visibleText(worst.between[1])}; ${formatNumber(worst.withinDeg, 2)}° are allowed.`);
  return picture(id, height, { title: `${names[0]} and ${names[1]} over one another`, text }, [
    ...levels(box, y, "°"),
    ...pulseTicks(first, box.bottom + 14),
    ...pulseTicks(second, box.top - 4),
    label(pictureWidth - 2, box.bottom + 14, "µs", "end"),
    label(pictureWidth - 2, box.top - 4, "µs", "end"),
    stroke(
      [
        [box.left, 9],
        [box.left + 26, 9],
      ],
      { "stroke-width": 1.8 },
    ),
    label(box.left + 31, 13, shortName(one.id, 15)),
    stroke(
      [
        [190, 9],
        [216, 9],
      ],
      { "stroke-width": 1.8, "stroke-dasharray": "6 4" },
    ),
    label(221, 13, shortName(other.id, 15)),
    stroke(curve(first), { "stroke-width": 1.8 }),
    stroke(curve(second), { "stroke-width": 1.8, "stroke-dasharray": "6 4" }),
    ...(ways.length === 0
      ? []
      : difference(
          ways.map(({ pulseUs, differenceDeg }) => [spanOf(first, pulseUs), differenceDeg] as const),
          worst?.withinDeg,
          { left: box.left, right: box.right, top: height - strip + 14, bottom: height - 3 },
          x,
        )),
  ]);
}

function difference(
  ways: readonly (readonly [number, number])[],
  withinDeg: number | undefined,
  box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
  x: (span: number) => number,
): Element[] {
  const largest = Math.max(withinDeg ?? 0, ...ways.map(([, value]) => Math.abs(value)), 0.05) * 1.15;
  const y = scaleOver([-largest, largest], [box.bottom, box.top]);
  const level = (value: number, dashes: string) =>
    stroke(
      [
        [box.left, y(value)],
        [box.right, y(value)],
      ],
      { "stroke-dasharray": dashes, "stroke-opacity": 0.8 },
    );
  return [
    level(0, "none"),
    ...(withinDeg === undefined ? [] : [level(withinDeg, "4 3"), level(-withinDeg, "4 3")]),
    stroke(
      ways.map(([span, value]): Place => [x(span), y(value)]),
      { "stroke-width": 1.8 },
    ),
    label(box.left - 5, y(0) + 4.5, "0", "end"),
    label(
      box.right + 4,
      y(withinDeg ?? largest / 1.15) + 8,
      `±${formatNumber(withinDeg ?? largest / 1.15, 1)}°`,
    ),
    label(box.left, box.top - 3, "difference"),
  ];
}

/** Along the control that moves both furthest while it asks both for the same. */
function longestWay(first: SheetServo, second: SheetServo): readonly Together[] {
  const twins = new Map(second.settings.map((setting) => [settingKey(setting), setting]));
  const ways = new Map<string, { one: number; other: number }[]>();
  for (const setting of first.settings) {
    const twin = twins.get(settingKey(setting));
    const wanted = setting.wanted?.deflectionDeg;
    if (
      twin === undefined ||
      wanted === undefined ||
      Math.abs((twin.wanted?.deflectionDeg ?? NaN) - wanted) > 1e-9
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

/** "0.40° of 0.50° allowed", where the plan compares the two. */
export function matchText(first: SheetServo, second: SheetServo, { matches }: SetupPlan): string | undefined {
  const surfaces = [first.described.surface, second.described.surface];
  const match = matches.find((one) => surfaces.every((surface) => one.surfaces.includes(surface)));
  if (match === undefined) return undefined;
  const [from, to] = match.between.map(visibleText);
  return `${visibleText(match.group)} differ by ${degreesText(match.worstDeg, 2).replace("+", "")} at most, between ${from} and ${to}; ${formatNumber(match.withinDeg, 2)}° allowed.`;
}
