import {
  type Cause,
  formatNumber,
  type LineVerdict,
  type MatchVerdict,
  type Outcome,
  type PulseVerdict,
  type SetupPlan,
  type Verification,
} from "@hingeline/core";
import { pulseText } from "./numbers.ts";
import { settingText } from "./state-text.ts";
import { visibleText } from "./visible-text.ts";

const outcomes: Readonly<Record<Outcome, string>> = {
  agrees: "agrees",
  differs: "DIFFERS",
  cannotTell: "cannot tell",
  notMeasured: "NOT MEASURED",
};

const channelPlaces = {
  limitLow: "low limit",
  limitHigh: "high limit",
  sweptLow: "lowest of the sweep",
  sweptHigh: "highest of the sweep",
  neutral: "at rest",
  failsafe: "failsafe",
  powerUp: "at power-up",
} as const;

/** How a line came out, in a word or two. */
export function outcomeText(verdict: LineVerdict): string {
  return isUnsafe(verdict) ? "UNSAFE" : outcomes[verdict.outcome];
}

/** Which line of a channel: "low limit", "flap at landing". */
export function placeText({ place }: Exclude<LineVerdict, MatchVerdict>, isSurfaceNamed = false): string {
  if (place.kind !== "setting") return channelPlaces[place.kind];
  return isSurfaceNamed ? `${visibleText(place.surface)}: ${settingText(place)}` : settingText(place);
}

/** "NOT PASSED: of 13 lines 5 agreed, 1 differed, 0 cannot be told, 7 not measured", and what to do about what cannot be told. */
export function resultText({ verdicts, passed }: Verification): string {
  const count = (outcome: Outcome) => verdicts.filter((one) => one.outcome === outcome).length;
  const result = passed
    ? `PASSED${count("notMeasured") === 0 ? "" : " as far as it was measured"}`
    : count("notMeasured") === verdicts.length
      ? "NOTHING WAS MEASURED"
      : "NOT PASSED";
  const remedy =
    count("cannotTell") === 0 ? "" : " (read again with a finer meter, stated under instruments)";
  return `${result}: of ${verdicts.length} lines ${count("agrees")} agreed, ${count("differs")} differed, ${count("cannotTell")} cannot be told${remedy}, ${count("notMeasured")} not measured`;
}

/** Which plan the readings belong to: "revision 0123abcd, ANOTHER PLAN". */
export function takenOnText({ revision }: Verification): string {
  return `taken on revision ${revision.measured}${revision.same ? "" : ", ANOTHER PLAN"}`;
}

/** One sentence for every pulse read outside what is safe for its servo. */
export function unsafeTexts(verdicts: readonly LineVerdict[], { channels }: SetupPlan): string[] {
  return verdicts.filter(isUnsafe).map((verdict) => {
    const [lowUs, highUs] = channels.find(({ channel }) => channel === verdict.channel)?.safeUs ?? [0, 0];
    return `Channel ${verdict.channel}, ${placeText(verdict)}: ${pulseText(verdict.readUs ?? 0)} is outside the safe ${formatNumber(lowUs, 1)} to ${pulseText(highUs)}. Receiver off; do not connect it.`;
  });
}

// From here on a pulse is no slip of a step or of the meter: the surface goes somewhere else. (assumption of experience)
const farUs = 100;

/** One sentence for every pulse that is safe by itself and yet far from what it should be. */
export function farTexts(verdicts: readonly LineVerdict[]): string[] {
  return verdicts.flatMap((one) =>
    one.quantity === "pulse" &&
    one.outcome === "differs" &&
    one.unsafe !== true &&
    Math.abs(one.byUs ?? 0) >= farUs
      ? [
          `Channel ${one.channel}, ${placeText(one)}: ${pulseText(one.readUs ?? 0)} is ${pulseText(Math.abs(one.byUs ?? 0))} from what it should be. Not a small slip: do not connect it, and do not fly, until it agrees.`,
        ]
      : [],
  );
}

/** What the causes that are named mean for the readings; undefined where there is nothing to explain. */
export function causesIntro(causes: readonly Cause[], verdicts: readonly LineVerdict[]): string | undefined {
  if (causes.length === 0)
    return verdicts.some(({ outcome }) => outcome === "differs")
      ? "No single cause that is known here gives all the readings."
      : undefined;
  if (!causes.some(({ all }) => all))
    return "No single cause gives all the readings. What would give those of one channel alone:";
  return causes.length === 1
    ? "This alone would give all the readings:"
    : "Any one of these would give all the readings:";
}

/** One sentence for the channels that differ and that none of the causes explains. */
export function unexplainedText(
  causes: readonly Cause[],
  verdicts: readonly LineVerdict[],
): string | undefined {
  if (causes.some(({ all }) => all)) return undefined;
  const explained = new Set(causes.flatMap(({ channels }) => channels));
  const channels = verdicts.flatMap((one) =>
    one.quantity !== "match" && one.outcome === "differs" && !explained.has(one.channel) ? [one.channel] : [],
  );
  const [first, ...others] = new Set(channels);
  if (first === undefined) return undefined;
  const named = others.length === 0 ? `Channel ${first}` : `Channels ${[first, ...others].join(", ")}`;
  return `${named}: no known cause. Enter the plan's values again, read again, and look at servo and linkage.`;
}

function isUnsafe(verdict: LineVerdict): verdict is PulseVerdict {
  return verdict.quantity === "pulse" && verdict.unsafe === true;
}
