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
  wrongColumn: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} holds the number of another column of the plan${typedFor(numbers)}.`,
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
  wrongChannel: ({ where, other, place, numbers }) => ({
    message:
      place === undefined
        ? `What was read on ${where} is what ${other} should send.`
        : `In ${where}, ${place} holds the value of ${other}${typedFor(numbers)}.`,
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
  minusSign: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} has lost or gained a minus sign${typedFor(numbers)}.`,
    do: readAgain,
  }),
  detentsSwapped: ({ where, place, otherPlace }) => ({
    message: `In ${where}, ${place} and ${otherPlace} have each other's value.`,
    do: readAgain,
  }),
  otherDetent: ({ where, place, otherPlace, numbers }) => ({
    message: `In ${where}, ${place} has the value of ${otherPlace}${typedFor(numbers)}.`,
    do: readAgain,
  }),
  notEntered: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} was not entered, or its control does not act on this channel${typedFor(numbers)}.`,
    do: readAgain,
  }),
  failsafeNotSet: ({ where }) => ({
    message: `The failsafe of ${where} was not set, or the controls stood elsewhere when it was stored.`,
    do: "Set the failsafe, switch the transmitter off and read it again.",
  }),
  digitsSwapped: ({ where, place, numbers }) => ({
    message: `In ${where}, two digits of ${place} are changed over${typedFor(numbers)}.`,
    do: readAgain,
  }),
  decimalPoint: ({ where, place, numbers }) => ({
    message: `In ${where}, the decimal point of ${place} is in the wrong place${typedFor(numbers)}.`,
    do: readAgain,
  }),
  clampedByLimit: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} cuts in at ${us(numbers, "limitUs")}; the plan has ${us(numbers, "wasUs")}.`,
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
  readingsSwapped: ({ place, otherPlace }) => ({
    message: `The deflections of ${place} and ${otherPlace} are written in each other's place.`,
    do: "Measure both again.",
  }),
  otherValue: ({ where, place, numbers }) => ({
    message: `In ${where}, ${place} stands at another value${typedFor(numbers)}.`,
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

function typedFor(numbers: Numbers): string {
  const { percent: right, typedPercent } = numbers ?? {};
  if (right === undefined || typedPercent === undefined) return "";
  const text = (value: number) => `${sign(value, true)}${formatTrimmed(value, 2)} %`;
  return `: ${text(typedPercent)} in place of ${text(right)}`;
}

function sign(value: number, isSigned: boolean): string {
  return isSigned && value > 0 ? "+" : "";
}
