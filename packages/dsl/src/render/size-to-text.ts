import {
  type CandidateFault,
  formatNumber,
  formatTrimmed,
  type Proposal,
  type SizeResult,
  type SizeTask,
} from "@hingeline/core";
import { alignTable, type Column } from "./align-table.ts";
import { type Paint, paintFor } from "./paint.ts";
import { hang } from "./wrap-text.ts";

/** What was asked of `size` and what came of it. */
export interface SizeFacts {
  readonly task: SizeTask;
  readonly result: SizeResult;
  /** Least angle between the rod and arm or horn. */
  readonly leastAngleDeg: number;
  /** How much even servo travel counts; see SizePreferences. */
  readonly evenTravel: number;
}

/** What the proposals do not know. */
export const sizeCautions: readonly string[] = [
  "An estimate of geometry alone, in one plane: it knows no flex, no play, no widths, and nothing that is in the way.",
  "The more torque, the slower the surface, and the larger the forces in rod and horn.",
  "Measure what was built with a servo tester before a plan is made for it.",
];

/** The proposals as a table for the bench, best first, with the reasons; at most `columns` wide (80 or more), ending with a line feed. */
export function sizeToText(
  facts: SizeFacts,
  { colour = false, columns = 80 }: { readonly colour?: boolean; readonly columns?: number } = {},
): string {
  const paint = paintFor(colour);
  const { proposals } = facts.result;
  const [best] = proposals;
  const lines = [
    ...headLines(facts, columns),
    "",
    ...(best === undefined
      ? hang("", "Nothing does what is wanted. See what is left out, and try other holes or angles.", columns)
      : [
          ...alignTable(
            "",
            proposals.map((_, index) => `${index + 1}`),
            columnsOf(proposals, facts, paint),
            columns,
          ),
          "",
          ...readingLines(facts, columns),
          "",
          ...hang("Declare    ", `the first as ${declaration(best)}`, columns),
          ...hang(
            "Fineness   ",
            `one microsecond moves its surface by ${formatNumber(best.steepest, 3)} deg at most`,
            columns,
          ),
        ]),
    "",
    ...sizeCautions.flatMap((text) => hang("- ", text, columns)),
  ];
  return `${lines.join("\n")}\n`;
}

function headLines({ task, result, leastAngleDeg }: SizeFacts, columns: number): string[] {
  const { place, wanted, servo } = task;
  const { tried, fitting, proposals, rejected } = result;
  const hinge =
    place.kind === "plane"
      ? [`${aside(place.base, "aft of", "ahead of")} the shaft, ${aside(place.rise, "above", "below")} it`]
      : [];
  const shown = proposals.length < fitting ? `; the best ${proposals.length} shown` : "";
  const left = faultTexts(leastAngleDeg).flatMap(([fault, text]) =>
    rejected[fault] === 0 ? [] : [`${rejected[fault]} ${text}`],
  );
  return [
    ...hang("Wanted     ", `${show(-wanted.up)} deg up and ${show(wanted.down)} deg down`, columns),
    ...hinge.flatMap((text) => hang("Hinge      ", text, columns)),
    ...hang(
      "Servo      ",
      `turns ${show(servo.travel)} deg to either side of its middle, ${show(servo.rotation)} deg a microsecond`,
      columns,
    ),
    ...hang("Tried      ", `${combinations(tried)}, of which ${fitting} would do${shown}`, columns),
    ...(left.length === 0
      ? []
      : hang("Left out   ", `each for the first thing wrong: ${left.join("; ")}`, columns)),
  ];
}

function faultTexts(leastAngleDeg: number): readonly (readonly [CandidateFault, string])[] {
  return [
    ["cannotBeMade", "stand at a dead centre at level"],
    ["notReached", "never reach a wanted deflection"],
    ["travelTooShort", "need more servo travel than there is"],
    ["nearDeadCentre", `bring the rod nearer than ${show(leastAngleDeg)} deg to one line with arm or horn`],
  ];
}

function columnsOf(proposals: readonly Proposal[], facts: SizeFacts, paint: Paint): Column[] {
  const column = (head: string, unit: string, cell: (proposal: Proposal) => string): Column => ({
    head,
    unit,
    cells: proposals.map(cell),
  });
  return [
    { ...column("ARM", "mm", ({ arm }) => show(arm)), paint: paint.strong },
    column("at", "deg", ({ armAngle }) => angle(armAngle)),
    ...(asksLevel(facts) ? [column("level", "deg", ({ levelRotation }) => angle(levelRotation))] : []),
    { ...column("HORN", "mm", ({ horn }) => show(horn)), paint: paint.strong },
    column("at", "deg", ({ hornAt }) => angle(hornAt)),
    column("rod", "mm", ({ rod }) => formatNumber(rod, 1)),
    column("up", "deg", ({ rotationUp }) => formatNumber(Math.abs(rotationUp), 0)),
    column("down", "deg", ({ rotationDown }) => formatNumber(Math.abs(rotationDown), 0)),
    column("torque", "x", ({ worstRatio }) => formatNumber(1 / worstRatio, 2)),
    ...(facts.evenTravel === 0 ? [] : [column("ranks", "x", ({ score }) => formatNumber(1 / score, 2))]),
    column("angle", "deg", ({ worstSine }) => formatNumber((Math.asin(worstSine) * 180) / Math.PI, 0)),
  ];
}

/** How to read the table, and why it stands in this order. */
function readingLines(facts: SizeFacts, columns: number): string[] {
  const { evenTravel } = facts;
  const column = (name: string, text: string) => hang(name.padEnd(11), text, columns);
  return [
    ...column("Order", evenTravel === 0 ? "most torque first" : "by what it ranks at, the most first"),
    ...column(
      "at",
      "from aft (0) through up (90): the arm with the servo at its middle, the horn with the surface level",
    ),
    ...(asksLevel(facts)
      ? column("level", "what the servo is turned from its middle where the surface is level")
      : []),
    ...column("rod", "pin to pin, what fits at level"),
    ...column("up, down", "what the servo turns from level to the wanted deflections"),
    ...column("torque", "at the surface for one at the servo, where it is least"),
    ...(evenTravel === 0
      ? []
      : column(
          "ranks",
          `torque / (1 + ${show(evenTravel)} u), u being 0 where the servo turns as much up as down and 1 where all is on one side`,
        )),
    ...column("angle", "least between the rod and arm or horn, on all of the way"),
  ];
}

/** Whether level may lie anywhere but at the servo's middle. */
function asksLevel({ task: { levelRotations = [] } }: SizeFacts): boolean {
  return levelRotations.some((rotation) => rotation !== 0);
}

/** The best as a model file states it. */
function declaration({ linkage, arm, horn, armAt, hornAt }: Proposal): string {
  const place =
    linkage.kind === "pushrod" ? `base: mm(${show(linkage.base)}), rise: mm(${show(linkage.rise)}), ` : "";
  return `pushrod({ arm: mm(${show(arm)}), horn: mm(${show(horn)}), ${place}armAt: deg(${show(armAt)}), hornAt: deg(${show(hornAt)}) })`;
}

function combinations(count: number): string {
  return count === 1 ? "1 combination" : `${count} combinations`;
}

/** "16 mm below" */
function aside(lengthMm: number, positive: string, negative: string): string {
  return `${show(Math.abs(lengthMm))} mm ${lengthMm < 0 ? negative : positive}`;
}

function angle(angleDeg: number): string {
  return formatTrimmed(angleDeg, 1);
}

function show(value: number): string {
  return formatTrimmed(value, 6);
}
