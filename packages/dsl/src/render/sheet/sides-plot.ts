import { formatNumber, type PlanMatch, type SetupPlan, us } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import type { Element } from "./element.ts";
import { findMatch, matchText } from "./match-text.ts";
import {
  area,
  type Box,
  label,
  levels,
  type Place,
  picture,
  pictureWidth,
  scaleOver,
  shortName,
  stroke,
} from "./plot-parts.ts";
import { samplePulses } from "./sample-pulses.ts";
import type { SheetServo } from "./servo-on-sheet.ts";
import { longestWay } from "./sides-way.ts";

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
  const box = { left: 38, right: 330, top: 18, bottom: height - 20 - strip };
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
  const match = findMatch(first, second, matches);
  const text = `${names[0]} as a full line with the pulses below, ${names[1]} dashed with the pulses above.${match === undefined ? "" : ` ${matchText(match)}`}`;
  return picture(id, height, { title: `${names[0]} and ${names[1]} over one another`, text }, [
    ...levels(box, y, "°"),
    ...pulseTicks(first, box.bottom + 14),
    ...pulseTicks(second, box.top - 4),
    label(pictureWidth - 2, box.bottom + 14, "µs", "end"),
    label(pictureWidth - 2, box.top - 4, "µs", "end"),
    ...legend(box, [shortName(one.id, 15), shortName(other.id, 15)]),
    stroke(curve(first), { "stroke-width": 1.8 }),
    stroke(curve(second), { "stroke-width": 1.8, "stroke-dasharray": "6 4" }),
    ...(ways.length === 0
      ? []
      : difference(
          ways.map(({ pulseUs, differenceDeg }) => [spanOf(first, pulseUs), differenceDeg] as const),
          match,
          { left: box.left, right: box.right, top: height - strip + 14, bottom: height - 3 },
          x,
        )),
  ]);
}

/** The lines with their names, in the two corners that stay empty, as deflection grows to the right. */
function legend(box: Box, names: readonly [string, string]): Element[] {
  const line = (x: number, y: number, more: Readonly<Record<string, string>> = {}) =>
    stroke(
      [
        [x, y],
        [x + 24, y],
      ],
      { "stroke-width": 1.8, ...more },
    );
  return [
    line(box.left + 6, box.top + 7),
    label(box.left + 35, box.top + 11.5, names[0]),
    line(box.right - 30, box.bottom - 8, { "stroke-dasharray": "6 4" }),
    label(box.right - 35, box.bottom - 3.5, names[1], "end"),
  ];
}

/** The difference on its way, between what is allowed (dashed), over the band in which it cannot be told from none. */
function difference(
  ways: readonly (readonly [number, number])[],
  match: PlanMatch | undefined,
  box: Box,
  x: (span: number) => number,
): Element[] {
  const { withinDeg, uncertaintyDeg = 0 } = match ?? {};
  const ends = [withinDeg ?? 0, uncertaintyDeg, ...ways.map(([, value]) => Math.abs(value)), 0.05];
  const largest = Math.max(...ends) * 1.1;
  const y = scaleOver([-largest, largest], [box.bottom, box.top]);
  const across = (value: number): Place[] => [
    [box.left, y(value)],
    [box.right, y(value)],
  ];
  const level = (value: number, dashes: string) =>
    stroke(across(value), { "stroke-dasharray": dashes, "stroke-opacity": 0.8 });
  const shown = withinDeg ?? largest / 1.1;
  return [
    area([...across(uncertaintyDeg), ...across(-uncertaintyDeg).reverse()], { "fill-opacity": 0.14 }),
    level(0, "none"),
    ...(withinDeg === undefined ? [] : [level(withinDeg, "4 3"), level(-withinDeg, "4 3")]),
    stroke(
      ways.map(([span, value]): Place => [x(span), y(value)]),
      { "stroke-width": 1.8 },
    ),
    label(box.left - 5, y(0) + 4.5, "0", "end"),
    label(box.right + 4, y(shown) + 8, `±${formatNumber(shown, 1)}°`),
    label(
      box.left,
      box.top - 3,
      match === undefined
        ? "difference"
        : `difference, its doubt ±${formatNumber(uncertaintyDeg, 2)}° as a band`,
    ),
  ].flatMap((part) => part ?? []);
}
