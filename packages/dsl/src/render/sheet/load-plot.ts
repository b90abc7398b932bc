import { formatNumber, type Setting } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { fontSize, hatch, label, picture, scaleOver, shortName, stroke, units } from "./plot-parts.ts";
import { type SheetServo, shortSetting } from "./servo-on-sheet.ts";

const loadRowHeight = 16;
/** Together at least this high, so that two bars can be told apart at arm's length. */
const leastBarsHeight = 54;
const mostBars = 4;

/** The estimated share of the servo's stall torque at the settings that load it most, as bars; undefined where none is estimated. */
export function loadPlot({ described, settings, key }: SheetServo): Element | undefined {
  const loaded = settings
    .flatMap((setting) => (setting.load === undefined ? [] : [{ setting, load: setting.load }]))
    .toSorted((a, b) => b.load.share - a.load.share)
    .slice(0, mostBars);
  if (loaded.length === 0) return undefined;
  const name = visibleText(described.id);
  const id = `load-${key}`;
  const rowHeight = Math.max(loadRowHeight, leastBarsHeight / loaded.length);
  const box = { left: 104, right: 250, top: 20, bottom: 20 + loaded.length * rowHeight };
  const x = scaleOver([0, 1, ...loaded.map(({ load }) => load.share)], [box.left, box.right]);
  const mark = (share: number, dashes: string) =>
    stroke(
      [
        [x(share), box.top - 3],
        [x(share), box.bottom],
      ],
      { "stroke-dasharray": dashes },
    );
  const words = loaded.map(
    ({ setting, load }) =>
      `${visibleText(shortSetting(setting))} ${shareText(load.share)} at ${formatNumber(load.airspeedMps, 1)} m/s`,
  );
  return picture(
    id,
    box.bottom + 4,
    { title: `Estimated load of ${name}`, text: `Share of the servo's stall torque: ${words.join("; ")}.` },
    [
      h("defs", {}, hatch(`${id}-bar`, true)),
      label(2, 13, `load of ${shortName(described.id, 18)}`),
      ...loaded.flatMap(({ setting, load }, index) => bar(setting, load, box.top + index * rowHeight, x, id)),
      mark(0, "none"),
      mark(0.5, "4 3"),
      mark(1, "none"),
      label(x(0.5), 13, "half", "middle"),
      label(x(1), 13, "stall", "middle"),
    ],
  );
}

function bar(
  setting: Setting,
  load: NonNullable<Setting["load"]>,
  top: number,
  x: (share: number) => number,
  id: string,
): Element[] {
  return [
    label(x(0) - 4, top + fontSize, shortName(shortSetting(setting), 15), "end"),
    h("rect", {
      x: units(x(0)),
      y: units(top + 2),
      width: units(x(load.share) - x(0)),
      height: loadRowHeight - 5,
      fill: `url(#${id}-bar)`,
      stroke: "currentColor",
    }),
    label(256, top + fontSize, `${shareText(load.share)}, ${formatNumber(load.airspeedMps, 1)} m/s`),
  ];
}

function shareText(share: number): string {
  return `${formatNumber(share * 100, 0)} %`;
}
