import {
  formatNumber,
  formatTrimmed,
  type ServoSwap,
  type ServoSwapProblem,
  type SwapTest,
} from "@hingeline/core";
import { signed } from "./numbers.ts";
import { visibleText } from "./visible-text.ts";
import { hang, wrapText } from "./wrap-text.ts";

type Reading = ServoSwap["readings"][number];

/** What a swapped servo's bench becomes, to paste and to measure again, as text ending with a line feed. */
export function swapToText(swap: ServoSwap, read: readonly Reading[], columns = 80): string {
  const { map, servo, label } = swap;
  const { offsetUs, factor, fromUs } = map;
  const lines = [
    ...hang(
      "SERVO SWAP  ",
      visibleText(servo) + (label === undefined ? "" : `, was [${visibleText(label)}]`),
      columns,
    ),
    ...hang(
      "Map         ",
      `new pulse = ${formatNumber(offsetUs, 1)} us + ${formatNumber(factor, 4)} x old pulse, for old pulses from ${formatNumber(fromUs[0], 1)} to ${formatNumber(fromUs[1], 1)} us`,
      columns,
    ),
    ...map.tests.flatMap((test) => hang("Test        ", testText(test, read[test.index]), columns)),
    "",
    ...(map.accepted ? acceptedLines(swap, columns) : refusedLines(map.worst, columns)),
  ];
  return `${lines.join("\n")}\n`;
}

/** Why there is no map, in one sentence. */
export function swapProblemText(problem: ServoSwapProblem): string {
  switch (problem.kind) {
    case "unknown-servo":
      return `There is no servo "${problem.servo}"; there is ${problem.known.join(", ")}.`;
    case "no-response":
      return `The bench of ${problem.servo} knows no degrees, or contradicts itself: there is nothing to map.`;
    case "impossible-reading":
      return `Reading ${problem.index + 1} cannot be: this surface has no such deflection, throw or chord.`;
    case "too-few-readings":
      return `${problem.count} ${problem.count === 1 ? "reading is" : "readings are"} too few: two make the map, the third is its test.`;
    case "not-covered":
      return `The old servo was never read at ${formatTrimmed(problem.deflectionDeg, 2)} deg; its readings go from ${formatTrimmed(problem.knownDeg[0], 2)} to ${formatTrimmed(problem.knownDeg[1], 2)} deg.`;
    case "too-close":
      return `The outermost readings lie ${formatTrimmed(problem.spanDeg, 2)} deg apart; more than ${formatTrimmed(problem.neededDeg, 2)} deg are needed.`;
    case "no-test":
      return "No reading lies between the outermost two, so there is no test.";
    case "turns-other-way":
      return "The new servo turns the other way, or a reading is wrong: take the whole table of readings.";
  }
}

function testText({ expectedUs, missUs, missDeg, doubtDeg }: SwapTest, reading: Reading | undefined): string {
  const at =
    reading === undefined ? "" : `${placeText(reading[1])} read at ${formatTrimmed(reading[0], 2)} us, `;
  return `${at}expected at ${formatNumber(expectedUs, 1)} us: misses by ${signed(missUs, 1)} us, ${signed(missDeg, 2)} deg; the doubt is ${formatNumber(doubtDeg, 2)} deg`;
}

function acceptedLines(
  { servo, label, levelUs, guardUs, readings, rotation, taken, measureAgain }: ServoSwap,
  columns: number,
): string[] {
  const { stops, level, readings: outside } = measureAgain;
  const again = [
    `the ${stops.length === 2 ? "stops" : "stop"} ${stops.join(" and ")} of the new servo, from inside: a map never gives a stop, and the old ones are not safe`,
    ...(level ? ["level: it lies outside the map"] : []),
    ...outside.map(
      ([pulse, at]) =>
        `the reading of ${placeText(at)} (old pulse ${formatTrimmed(pulse, 1)} us): it lies outside the map`,
    ),
  ];
  return [
    ...wrapText(
      `ACCEPTED. Put this in place of ${rotation === undefined ? "" : "the rotation and "}the bench of ${visibleText(servo)}, with the pulses in place of the dots once they are measured.${label === undefined ? "" : " Change the servo's label too."}`,
      columns,
    ),
    "",
    ...(rotation === undefined ? [] : [typeLine(rotation)]),
    "bench: {",
    ...(stops.includes("up") ? ["  up: us(...), // measure"] : []),
    `  level: ${levelUs === undefined ? "us(...), // measure" : `us(${formatNumber(levelUs, 1)}),`}`,
    "  down: us(...), // measure",
    // Rounded up: a guard is never narrower than asked for.
    ...(guardUs === undefined
      ? []
      : [`  guard: us(${formatTrimmed(Math.ceil(guardUs * 10 - 1e-6) / 10, 1)}),`]),
    ...(readings.length === 0 ? [] : readingLines(readings, 1)),
    "},",
    ...(taken === undefined ? [] : takenLines(taken, columns)),
    "",
    "MEASURE AGAIN on the bench",
    ...again.flatMap((text) => hang("[ ] ", text, columns)),
  ];
}

function typeLine({ degPerUs, oldDegPerUs }: NonNullable<ServoSwap["rotation"]>): string {
  return `type: { rotation: degPerUs(${formatTrimmed(degPerUs, 5)}) }, // was ${formatTrimmed(oldDegPerUs, 5)}; the rest from its sheet`;
}

/** Readings that may be pasted too, and what comes of it. */
function takenLines(taken: readonly Reading[], columns: number): string[] {
  return [
    "",
    ...wrapText(
      "Until now no reading told how this surface moves. Put the new ones into the bench as well: the linkage is then fitted to them, and nothing past the outermost two is used.",
      columns,
    ),
    "",
    ...readingLines(taken, 0),
  ];
}

function readingLines(readings: readonly Reading[], depth: number): string[] {
  const lines = ["readings: [", ...readings.map((reading) => `  ${readingCode(reading)},`), "],"];
  return lines.map((line) => "  ".repeat(depth) + line);
}

function refusedLines({ missDeg, doubtDeg }: SwapTest, columns: number): string[] {
  return wrapText(
    `REFUSED: the test misses by ${formatNumber(Math.abs(missDeg), 2)} deg, more than the ${formatNumber(doubtDeg, 2)} deg of doubt: the arm stands on another tooth or the linkage differs. Take the whole table of readings; do not fly on this map.`,
    columns,
  );
}

/** A reading as it stands in a model file. */
function readingCode([pulse, at, way]: Reading): string {
  const place =
    typeof at === "number"
      ? `deg(${at})`
      : `${at.kind === "throw" ? "atThrow" : "atExtension"}(mm(${at.mm}))`;
  return `[us(${formatNumber(pulse, 1)}), ${place}${way === undefined ? "" : `, "${way}"`}]`;
}

function placeText(at: Reading[1]): string {
  return typeof at === "number" ? `${formatTrimmed(at, 2)} deg` : `${formatTrimmed(at.mm, 2)} mm`;
}
