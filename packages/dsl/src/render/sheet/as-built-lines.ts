import type { Cause, LineVerdict, MatchVerdict, PulseVerdict, SetupPlan } from "@hingeline/core";
import { settingText } from "../state-text.ts";
import {
  causesIntro,
  outcomeText,
  placeText,
  resultText,
  takenOnText,
  unsafeTexts,
} from "../verify-words.ts";
import { visibleText } from "../visible-text.ts";
import { type ReadBack, verdictsOf } from "./read-back.ts";
import { readText, verdictText } from "./read-words.ts";
import type { SheetServo } from "./servo-on-sheet.ts";

/** One thing that as-built readings say beyond the rows of the tables. */
export interface AsBuiltLine {
  readonly head: string;
  readonly text: string;
  /** Not to be overlooked: unsafe, or on another plan. */
  readonly grave?: true;
}

/** The result of the whole, who read it and on which plan, and what the plan does not have; none without an as-built file. */
export function asBuiltResult({ verification, asBuilt }: ReadBack): readonly AsBuiltLine[] {
  if (asBuilt === undefined) return [];
  const { by = "", checkedBy = "", date = "" } = asBuilt;
  const who = [
    ...(by === "" ? [] : [`by ${visibleText(by)}`]),
    ...(checkedBy === "" ? [] : [`checked by ${visibleText(checkedBy)}`]),
    ...(date === "" ? [] : [visibleText(date)]),
  ];
  return [
    {
      head: "As built",
      text: `${resultText(verification)}; ${[takenOnText(verification), ...who].join(", ")}.`,
      ...(verification.revision.same ? {} : { grave: true }),
    },
    ...verification.strays.map((text) => ({ head: "Not in the plan", text: visibleText(text) })),
  ];
}

/** What was read on the channels of these servos beside their rows, and what would explain the differences, the likeliest first. */
export function asBuiltLines(
  readBack: ReadBack,
  plan: SetupPlan,
  servos: readonly SheetServo[],
): readonly AsBuiltLine[] {
  if (readBack.asBuilt === undefined) return [];
  const verdicts = verdictsOf(readBack, servos);
  const channels = [...new Set(servos.map(({ channel }) => channel.channel))];
  const causes = readBack.verification.causes.filter((cause) =>
    cause.channels.some((channel) => channels.includes(channel)),
  );
  return [
    ...unsafeTexts(verdicts, plan).map((text): AsBuiltLine => ({ head: "UNSAFE", text, grave: true })),
    ...causeLines(causes, verdicts),
    ...channels.flatMap((channel) => otherReadings(channel, verdicts)),
    ...sidesLine(verdicts),
  ];
}

function causeLines(causes: readonly Cause[], verdicts: readonly LineVerdict[]): AsBuiltLine[] {
  const intro = causesIntro(causes, verdicts);
  if (intro === undefined) return [];
  if (causes.length === 0) return [{ head: "Likely cause", text: intro }];
  return causes.map((cause, index) => ({
    head: index === 0 ? "Likely cause" : "Or",
    text: `${visibleText(cause.message)} ${visibleText(cause.do)}`,
  }));
}

/** What a channel has no row for: the sweep and the power-up. */
function otherReadings(channel: number, verdicts: readonly LineVerdict[]): AsBuiltLine[] {
  const shown = verdicts.filter(
    (one): one is PulseVerdict =>
      one.quantity === "pulse" &&
      one.channel === channel &&
      ["sweptLow", "sweptHigh", "powerUp"].includes(one.place.kind),
  );
  const texts = shown.map((one) => {
    const read = readText(one);
    return `${placeText(one)} ${read === undefined ? "" : `${read}${read === "none" ? "" : " µs"}, `}${verdictText(one)}`;
  });
  return shown.length === 0 ? [] : [{ head: `Channel ${channel}`, text: `${texts.join("; ")}.` }];
}

function sidesLine(verdicts: readonly LineVerdict[]): AsBuiltLine[] {
  const matches = verdicts.filter((one): one is MatchVerdict => one.quantity === "match");
  const texts = matches.map((one) => {
    const by = readText(one);
    return `${settingText(one.place)} ${by === undefined ? "" : `apart by ${by}°, `}${outcomeText(one)}`;
  });
  return matches.length === 0 ? [] : [{ head: "Left and right", text: `${texts.join("; ")}.` }];
}
