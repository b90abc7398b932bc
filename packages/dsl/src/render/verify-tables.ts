import { formatNumber, type LineVerdict, type MatchVerdict, type PlanChannel } from "@hingeline/core";
import { alignTable, type Column } from "./align-table.ts";
import { signed } from "./numbers.ts";
import type { Paint } from "./paint.ts";
import { settingText } from "./state-text.ts";
import { outcomeText, placeText } from "./verify-words.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

/** Every pulse and deflection of one channel that can be measured: what is expected, what was read, and the verdict. */
export function verifiedChannel(
  { channel, servos }: PlanChannel,
  verdicts: readonly LineVerdict[],
  paint: Paint,
  columns: number,
): string[] {
  const own = verdicts.filter((one) => one.quantity !== "match" && one.channel === channel);
  const pulses = own.filter((one) => one.quantity === "pulse");
  const deflections = own.filter((one) => one.quantity === "deflection");
  const several = new Set(deflections.map(({ place }) => place.surface)).size > 1;
  return [
    ...hang(`CHANNEL ${channel}   `, servos.map(visibleText).join(" and "), columns).map(paint.strong),
    "",
    ...alignTable(
      "Pulse",
      pulses.map((verdict) => placeText(verdict, several)),
      [
        numberColumn("expected", "us", pulses, ({ expectedUs }) => rangeText(expectedUs)),
        numberColumn("within", "us", pulses, ({ withinUs }) => formatNumber(withinUs, 1)),
        numberColumn("read", "us", pulses, ({ readUs, silent }) =>
          silent === true ? "none" : readUs === undefined ? "-" : formatNumber(readUs, 1),
        ),
        numberColumn("off by", "us", pulses, ({ byUs }) => (byUs === undefined ? "-" : signed(byUs, 1))),
        outcomeColumn(pulses, paint),
      ],
      columns,
    ),
    ...(deflections.length === 0
      ? []
      : [
          "",
          ...alignTable(
            "Deflection",
            deflections.map((verdict) => placeText(verdict, several)),
            [
              numberColumn("expected", "deg", deflections, ({ expectedDeg }) => signed(expectedDeg, 1)),
              numberColumn("within", "deg", deflections, ({ withinDeg }) =>
                withinDeg === undefined ? "-" : formatNumber(withinDeg, 2),
              ),
              numberColumn("read", "deg", deflections, ({ readDeg }) =>
                readDeg === undefined ? "-" : signed(readDeg, 1),
              ),
              numberColumn("off by", "deg", deflections, ({ byDeg }) =>
                byDeg === undefined ? "-" : signed(byDeg, 1),
              ),
              outcomeColumn(deflections, paint),
            ],
            columns,
          ),
        ]),
  ];
}

/** Left against right of the matched groups. */
export function verifiedMatches(matches: readonly MatchVerdict[], paint: Paint, columns: number): string[] {
  if (matches.length === 0) return [];
  return alignTable(
    "Left and right",
    matches.map(({ group, place }) => `${visibleText(group)}: ${settingText(place)}`),
    [
      numberColumn("within", "deg", matches, ({ withinDeg }) => formatNumber(withinDeg, 1)),
      numberColumn("doubt", "deg", matches, ({ doubtDeg }) => formatNumber(doubtDeg, 2)),
      numberColumn("apart by", "deg", matches, ({ byDeg }) => (byDeg === undefined ? "-" : signed(byDeg, 1))),
      outcomeColumn(matches, paint),
    ],
    columns,
  );
}

function numberColumn<V extends LineVerdict>(
  head: string,
  unit: string,
  verdicts: readonly V[],
  cell: (verdict: V) => string,
): Column {
  return { head, unit, cells: verdicts.map(cell) };
}

function outcomeColumn(verdicts: readonly LineVerdict[], paint: Paint): Column {
  return {
    head: "verdict",
    unit: "",
    cells: verdicts.map(outcomeText),
    paint: (text) =>
      /DIFFERS|UNSAFE/.test(text)
        ? paint.error(text)
        : /NOT MEASURED/.test(text)
          ? paint.warning(text)
          : text,
  };
}

function rangeText([lowUs, highUs]: readonly [number, number]): string {
  const low = formatNumber(lowUs, 1);
  return lowUs === highUs ? low : `${low} to ${formatNumber(highUs, 1)}`;
}
