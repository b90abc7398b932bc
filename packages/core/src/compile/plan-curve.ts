import { minimaxPolyline } from "../curve/minimax-polyline.ts";
import type { Knot } from "../curve/polyline.ts";
import { roundPolyline } from "../curve/round-polyline.ts";
import { worstError } from "../curve/worst-error.ts";
import type { Radio } from "../model/model.ts";
import type { PlanChannel } from "../plan/setup-plan.ts";
import { timesStep } from "../units/decimals.ts";
import type { Output } from "./output.ts";

/** The curve of a channel and how far off it is. */
export type PlanCurve = Required<Pick<PlanChannel, "curve" | "curveWorstDeg">>;

/**
 * The correction curve of a channel with as many points as the radio has, spaced as its points can be: its input is the deflection, -100
 * lowest and +100 highest, its output what is typed for the pulse, its worst error in pulse the least that points on the grid can have. Undefined where the
 * radio has no curve, or the bench knows no degrees.
 */
export function planCurve(
  output: Output,
  radio: Radio,
  points: number = radio.curvePoints,
): PlanCurve | undefined {
  const { travel, openPlaces, openUs, grid } = output;
  const { curveSpacing = "equal" } = radio;
  if (points < 2 || travel.unit !== "deg") return undefined;
  const [lowest, highest] = openPlaces;
  const placeOf = (command: number) =>
    Math.min(highest, Math.max(lowest, lowest + ((command + 100) / 200) * (highest - lowest)));
  const commandOf = (place: number) => ((place - lowest) / (highest - lowest)) * 200 - 100;
  const pulseOf = (command: number) => travel.pulseAt(placeOf(command)) ?? Number.NaN;
  const ends = [pulseOf(-100), pulseOf(100)].sort((a, b) => a - b);
  const breaks = travel.knotsUs
    .flatMap((pulseUs) => travel.placeAt(pulseUs) ?? [])
    .map(commandOf)
    .filter((command) => Math.abs(command) < 100)
    .sort((a, b) => a - b);
  const lowUs = Math.max(openUs[0], grid.limits.low.pulseUs);
  const highUs = Math.min(openUs[1], grid.limits.high.pulseUs);
  const exact = minimaxPolyline(pulseOf, [-100, 100], points, {
    points: curveSpacing,
    breaks,
    range: [ends[0] ?? lowUs, ends[1] ?? highUs],
  });
  if (exact === undefined) return undefined;
  // What can be typed: percents where limits clamp, shares where they scale.
  const typed = (pulseUs: number) => grid.around(pulseUs, [lowUs, highUs]);
  const rounded = roundPolyline(pulseOf, exact.knots, {
    neighbours: (pulseUs) => typed(pulseUs).map((entry) => entry.pulseUs),
    ...(curveSpacing === "free" ? { neighboursX: (command) => stepsAround(command, radio.step) } : {}),
    range: [lowUs, highUs],
    breaks,
  });
  if (rounded === undefined) return undefined;
  return {
    curve: rounded.knots.flatMap(({ x, y }) => {
      const entry = typed(y).find(({ pulseUs }) => pulseUs === y);
      return entry === undefined ? [] : [{ commandPercent: x, ...entry }];
    }),
    curveWorstDeg: worstDegrees(output, rounded.knots, lowest, highest),
  };
}

/** The percents on either side of a command that can be entered. */
function stepsAround(command: number, step: number): readonly number[] {
  return [timesStep(Math.floor(command / step), step), timesStep(Math.ceil(command / step), step)];
}

/** The largest difference between the deflection that the curve gives and the straight line that is wanted. */
function worstDegrees({ travel }: Output, knots: readonly Knot[], lowest: number, highest: number): number {
  const pulseOn = (command: number) => {
    const index = Math.max(
      1,
      knots.findIndex(({ x }) => x >= command),
    );
    const [from, to] = [knots[index - 1], knots[index]];
    if (from === undefined || to === undefined) return Number.NaN;
    const share = (command - from.x) / (to.x - from.x);
    return from.y * (1 - share) + to.y * share;
  };
  const breaks = knots.slice(1).flatMap((to, index) => {
    const from = knots[index];
    if (from === undefined || from.y === to.y) return [to.x];
    const passed = travel.knotsUs
      .map((pulseUs) => from.x + ((pulseUs - from.y) / (to.y - from.y)) * (to.x - from.x))
      .filter((command) => command > from.x && command < to.x);
    return [...passed, to.x];
  });
  const line = [
    { x: -100, y: lowest },
    { x: 100, y: highest },
  ];
  const inner = breaks.filter((command) => command > -100 && command < 100).sort((a, b) => a - b);
  return worstError((command) => travel.placeAt(pulseOn(command)) ?? Number.NaN, line, inner) ?? 0;
}
