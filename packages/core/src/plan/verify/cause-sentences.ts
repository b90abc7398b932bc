import { formatNumber, formatTrimmed } from "../../units/format.ts";
import type { CauseFacts } from "./hypothesis.ts";
import type { CauseKind } from "./verification.ts";

interface Sentences {
  readonly message: string;
  readonly do: string;
}

const readAgain = "Receiver off, enter it again from the plan, and read every pulse of it again.";

/** What each cause is and what to do, one function a kind. */
export const causeSentences: Readonly<Record<CauseKind, (facts: CauseFacts) => Sentences>> = {
  otherRevision: () => ({
    message: "The readings were taken on another revision of the plan.",
    do: "Enter this plan, then read all of it back; or verify against the plan that was entered.",
  }),
  testerOffset: ({ numbers }) => ({
    message: `The pulse meter shows every pulse ${us(numbers, "offsetUs", true)} off.`,
    do: "Read a known pulse with it, or read again with another meter.",
  }),
  otherScale: ({ numbers }) => ({
    message: `The radio or its frame mode is another than the plan's: it gives ${us(numbers, "centreUs")} at 0 % and ${us(numbers, "per100Us")} per 100 %, the plan counts on ${us(numbers, "planCentreUs")} and ${us(numbers, "planPer100Us")}.`,
    do: "Connect nothing. Make the plan for the radio that is used, and enter that.",
  }),
  otherEndPoints: ({ place, other }) => ({
    message: `The radio's limits ${other}, and the plan is made for limits that ${place}.`,
    do: `Connect nothing. Write endPoints: "${other}" into the model's radio, make the plan again, and enter that.`,
  }),
  wrongColumn: (facts) => ({
    message: `In ${facts.where}, ${facts.other} was typed for ${facts.place}${typedFor(facts)}.`,
    do: `Enter the column that the transmitter asks for. ${readAgain}`,
  }),
  sidesSwapped: ({ where, other }) => ({
    message: `Left and right are changed over: ${where} has the values of ${other}, and the other way round.`,
    do: "Enter each side in its own channel, or plug each lead into its own output. Read both again.",
  }),
  channelsSwapped: ({ where, other }) => ({
    message: `Two channels are changed over: ${where} has the values of ${other}, and the other way round.`,
    do: "Enter each in its own channel, or plug each lead into its own output. Read both again.",
  }),
  wrongChannel: (facts) => ({
    message:
      facts.place === undefined
        ? `What was read on ${facts.where} is what ${facts.other} should send.`
        : `In ${facts.where}, ${facts.place} holds the value of ${facts.other}${typedFor(facts)}.`,
    do: `See that the value, and the pulse meter, are at the right channel. ${readAgain}`,
  }),
  trimLeftIn: ({ place, numbers }) => ({
    message: `The trim of ${place} is not in its middle: it stands at about ${percent(numbers, "trimPercent")} of full travel.`,
    do: "Set the trim to its middle and read again.",
  }),
  directionReversed: ({ where }) => ({
    message: `The direction of ${where} is reversed.`,
    do: "Disconnect it. Direction comes before limits and positions: set it, then enter and read all of this channel again.",
  }),
  limitsSwapped: ({ where }) => ({
    message: `The low and the high limit of ${where} were typed on each other's side.`,
    do: `Disconnect it. ${readAgain}`,
  }),
  minusSign: (facts) => ({
    message: `In ${facts.where}, ${facts.place} has lost or gained a minus sign${typedFor(facts)}.`,
    do: readAgain,
  }),
  detentsSwapped: ({ where, place, otherPlace }) => ({
    message: `In ${where}, ${place} and ${otherPlace} have each other's value.`,
    do: readAgain,
  }),
  otherDetent: (facts) => ({
    message: `In ${facts.where}, ${facts.place} has the value of ${facts.otherPlace}${typedFor(facts)}.`,
    do: readAgain,
  }),
  notEntered: (facts) => ({
    message: `In ${facts.where}, ${facts.place} was not entered, or its control does not act on this channel${typedFor(facts)}.`,
    do: readAgain,
  }),
  failsafeNotSet: ({ where }) => ({
    message: `The failsafe of ${where} was not set, or the controls stood elsewhere when it was stored.`,
    do: "Set the failsafe, switch the transmitter off and read it again.",
  }),
  digitsSwapped: (facts) => ({
    message: `In ${facts.where}, two digits of ${facts.place} are changed over${typedFor(facts)}.`,
    do: readAgain,
  }),
  decimalPoint: (facts) => ({
    message: `In ${facts.where}, the decimal point of ${facts.place} is in the wrong place${typedFor(facts)}.`,
    do: readAgain,
  }),
  limitTooNarrow: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} stands at ${us(numbers, "limitUs")}, further in than the plan's ${us(numbers, "wasUs")}.`,
    do: readAgain,
  }),
  limitTooWide: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} stands at ${us(numbers, "limitUs")}, further out than the plan's ${us(numbers, "wasUs")}.`,
    do: `Disconnect it: the servo is not kept from its stop. ${readAgain}`,
  }),
  centreShifted: ({ where, numbers }) => ({
    message: `The centre of ${where} is shifted by ${us(numbers, "shiftUs", true)}.`,
    do: "Take the shift out: the plan puts level in a position, not in the centre. Look at the limits, then read all of this channel again.",
  }),
  linkageReversed: ({ where }) => ({
    message: `The surface of ${where} moves the other way at the right pulses, or the angle meter was read with its sign turned.`,
    do: "Look which way it moves. If the servo or the linkage is turned about, the bench readings do not hold: measure again.",
  }),
  armToothOut: ({ where, numbers }) => ({
    message: `The servo arm of ${where} is one tooth out: the surface stands as if every pulse were off by about ${us(numbers, "spanUs", true)}.`,
    do: "Receiver off, put the arm on the tooth of the bench readings, and measure again.",
  }),
  zeroOff: ({ where, numbers }) => ({
    message: `The surface of ${where} is off by the same ${degrees(numbers, "offDeg")} everywhere: the meter's zero, or the length of the rod.`,
    do: "Zero the meter again; if it was right, the rod is no longer as it was on the bench.",
  }),
  leverOther: ({ where, numbers }) => ({
    message: `Every deflection of ${where} is ${formatNumber(numbers?.ratio ?? 1, 2)} times what it should be: the rod is in another hole of the arm or horn.`,
    do: "Put the rod into the holes of the bench readings, or measure again.",
  }),
  readingSign: ({ where, place }) => ({
    message: `The deflection of ${place} of ${where} is written with the wrong sign.`,
    do: "Look which way the surface stands there, and measure it again.",
  }),
  readingsSwapped: ({ place, otherPlace }) => ({
    message: `The deflections of ${place} and ${otherPlace} are written in each other's place.`,
    do: "Measure both again.",
  }),
  otherValue: (facts) => ({
    message: `In ${facts.where}, ${facts.place} stands at another value${typedFor(facts)}.`,
    do: readAgain,
  }),
};

type Numbers = CauseFacts["numbers"];

function us(numbers: Numbers, key: string, isSpan = false): string {
  return `${sign(numbers?.[key] ?? 0, isSpan)}${formatNumber(numbers?.[key] ?? 0, 1)} us`;
}

function degrees(numbers: Numbers, key: string): string {
  return `${sign(numbers?.[key] ?? 0, true)}${formatNumber(numbers?.[key] ?? 0, 1)} deg`;
}

function percent(numbers: Numbers, key: string): string {
  return `${sign(numbers?.[key] ?? 0, true)}${formatNumber(numbers?.[key] ?? 0, 0)} %`;
}

function typedFor({ numbers, byShare = false }: CauseFacts): string {
  const { percent: right, typedPercent } = numbers ?? {};
  if (right === undefined || typedPercent === undefined) return "";
  const text = (value: number) => `${sign(value, true)}${formatTrimmed(value, 2)} ${byShare ? "share" : "%"}`;
  return `: ${text(typedPercent)} in place of ${text(right)}`;
}

function sign(value: number, isSigned: boolean): string {
  return isSigned && value > 0 ? "+" : "";
}
