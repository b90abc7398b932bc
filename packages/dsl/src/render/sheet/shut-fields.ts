import { formatNumber, type ServoDescription } from "@hingeline/core";
import { type Element, h } from "./element.ts";
import { type Box, label, type Scale, stroke, units } from "./plot-parts.ts";

/** Where no pulse may be: hatched closely beyond the stops, widely over the guards, with the safe ends as numbers. */
export function shutFields(
  box: Box,
  x: Scale,
  { stopsUs, guardUs, safeUs }: ServoDescription,
  id: string,
): Element[] {
  const [lowUs, highUs] = stopsUs;
  const [lowGuardUs, highGuardUs] = guardUs;
  const [fromUs = lowUs, toUs = highUs] = x.domain();
  const height = units(box.bottom - box.top);
  const field = (one: number, other: number, fill: string) => {
    const [left, right] = [Math.min(x(one), x(other)), Math.max(x(one), x(other))];
    return h("rect", {
      x: units(left),
      y: box.top,
      width: units(right - left),
      height,
      fill: `url(#${id}-${fill})`,
    });
  };
  const edge = (pulseUs: number, dashes: string) =>
    stroke(
      [
        [x(pulseUs), box.top],
        [x(pulseUs), box.bottom],
      ],
      { "stroke-dasharray": dashes },
    );
  const towards = x(safeUs[0]) < x(safeUs[1]);
  return [
    field(fromUs, lowUs, "stop"),
    field(highUs, toUs, "stop"),
    field(lowUs, safeUs[0], "guard"),
    field(safeUs[1], highUs, "guard"),
    edge(lowUs, "none"),
    edge(highUs, "none"),
    ...(lowGuardUs === 0 && safeUs[0] === lowUs ? [] : [edge(safeUs[0], "4 3")]),
    ...(highGuardUs === 0 && safeUs[1] === highUs ? [] : [edge(safeUs[1], "4 3")]),
    label(x(safeUs[0]), box.top - 4, formatNumber(safeUs[0], 0), towards ? "start" : "end"),
    label(x(safeUs[1]), box.top - 4, formatNumber(safeUs[1], 0), towards ? "end" : "start"),
  ];
}
