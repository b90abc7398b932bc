import type { Position } from "../setup-plan.ts";
import { type Entered, restKey } from "./entered.ts";
import { type Hypothesis, mapValues, type Suspect, typed } from "./hypothesis.ts";
import { columnNames, columnsOf } from "./value-slips.ts";

/** What of a channel is taken from another column; the rest of it is typed right. */
interface Part {
  readonly place: string;
  readonly settings: boolean;
  /** `asSetting`: only where a selector's detent is at rest, so that the settings have it. */
  readonly neutral: "right" | "asSetting" | "other";
  readonly failsafe: boolean;
}

const parts: readonly Part[] = [
  { place: "every position", settings: true, neutral: "asSetting", failsafe: false },
  { place: "every position", settings: true, neutral: "other", failsafe: false },
  { place: "every position", settings: true, neutral: "other", failsafe: true },
  { place: "every position but neutral", settings: true, neutral: "right", failsafe: false },
  { place: "neutral and failsafe", settings: false, neutral: "other", failsafe: true },
  { place: "failsafe", settings: false, neutral: "right", failsafe: true },
];

/** Many values of these channels, all from the same other column of the plan. */
export function columnFaults(suspects: readonly Suspect[], where: string): readonly Hypothesis[] {
  const names = columnNames(suspects.some(({ entered }) => entered.scaling));
  return names.flatMap((other, column) =>
    parts.map(
      (part): Hypothesis => ({
        kind: "wrongColumn",
        channels: suspects.map(({ plan }) => plan.channel),
        prediction: typed(...suspects.map((suspect) => readFrom(suspect, column, part))),
        where,
        place: part.place,
        other,
      }),
    ),
  );
}

/** The channel as typed by someone who reads this column in place of the right one; what does not stand in it is typed right. */
function readFrom({ plan, entered, observed }: Suspect, column: number, part: Part): Entered {
  const inColumn = (at: Position | undefined) =>
    at === undefined ? undefined : columnsOf(at, entered.scaling)[column];
  const changed = mapValues(entered, (value, key) => {
    const isRest = key === restKey;
    if (isRest ? part.neutral === "right" : !part.settings) return value;
    const setting = plan.settings.find((one) => observed.keyOf(one) === key)?.enter;
    return inColumn(setting ?? (isRest && part.neutral === "other" ? plan.neutral : undefined)) ?? value;
  });
  return part.failsafe ? { ...changed, failsafe: inColumn(plan.failsafe) ?? changed.failsafe } : changed;
}
