import { deg, degPerUs, mm, type SizeProblem, type SizeTask, size, splineAngles } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { sizeToJson } from "../render/size-to-json.ts";
import { sizeToText } from "../render/size-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { type ServoFacts, servoFacts } from "./servo-facts.ts";
import { tellFindings, tellProblem, tellUnusable, wantsColour } from "./tell.ts";

/** Millimetres and degrees; deflections and travel by their size. What ServoFacts holds may come from a model instead. */
export interface SizeArgs extends ServoFacts {
  readonly model?: string;
  readonly servo?: string;
  readonly armHoles: readonly number[];
  readonly hornHoles: readonly number[];
  /** Teeth of the shaft; without them the arm can take the angles in `armAt`, with them `armAt` is one of theirs. */
  readonly teeth?: number;
  readonly armAt?: readonly number[];
  readonly hornAt: readonly number[];
  readonly level: readonly number[];
  readonly travel: number;
  readonly leastAngle: number;
  readonly even: number;
  readonly most: number;
  readonly format: "text" | "json";
}

/** Prints the linkages that do what is wanted, best first; fails where there is none. */
export async function sizeCommand(args: SizeArgs, io: Io): Promise<number> {
  const found = await findFacts(args, io);
  if (typeof found === "number") return found;
  const { base, rise, rotation, up = 0, down = 0 } = { ...found, ...args };
  if (base === undefined || rise === undefined || rotation === undefined)
    return tellUnusable(`Give ${missing({ base, rise, rotation })}.`, io);
  const armAngles = armAnglesOf(args);
  if (typeof armAngles === "string") return tellUnusable(armAngles, io);
  if (args.leastAngle >= 90) return tellUnusable("The least angle should be below 90 deg.", io);
  const task: SizeTask = {
    place: { kind: "plane", base: mm(base), rise: mm(rise) },
    wanted: { up: deg(-up), down: deg(down) },
    servo: { travel: deg(args.travel), rotation: degPerUs(rotation) },
    armHoles: args.armHoles.map((hole) => mm(hole)),
    hornHoles: args.hornHoles.map((hole) => mm(hole)),
    armAngles: armAngles.map((angle) => deg(angle)),
    hornAngles: args.hornAt.map((angle) => deg(angle)),
    levelRotations: args.level.map((rotation) => deg(rotation)),
  };
  const leastSine = Math.sin((args.leastAngle * Math.PI) / 180);
  const result = size(task, { evenTravel: args.even, leastSine, most: args.most });
  if ("kind" in result) return tellUnusable(sentenceOf(result), io);
  const facts = { task, result, leastAngleDeg: args.leastAngle, evenTravel: args.even };
  io.stdout.write(
    args.format === "json" ? sizeToJson(facts) : sizeToText(facts, { colour: wantsColour(io.stdout, io) }),
  );
  return result.fitting === 0 ? exitFindings : exitDone;
}

/** What the model states of the servo, or the exit code where it does not. */
async function findFacts({ model, servo }: SizeArgs, io: Io): Promise<ServoFacts | number> {
  if (model === undefined && servo === undefined) return {};
  if (model === undefined || servo === undefined)
    return tellUnusable("Give a model and --servo together.", io);
  const loaded = await loadModel(model, io);
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  if ("findings" in loaded) return tellFindings(model, loaded.findings, io);
  const facts = servoFacts(loaded.model, servo);
  return typeof facts === "string" ? tellUnusable(facts, io) : facts;
}

function missing(facts: Readonly<Record<string, number | undefined>>): string {
  return Object.entries(facts)
    .flatMap(([name, value]) => (value === undefined ? [`--${name}`] : []))
    .join(", ");
}

/** The angles that the arm can take, or why that cannot be told. */
function armAnglesOf({ teeth, armAt }: SizeArgs): readonly number[] | string {
  if (teeth === undefined) return armAt ?? "Give --teeth, or with --arm-at the angles that the arm can take.";
  const [one = 90, ...others] = armAt ?? [];
  return others.length === 0 ? splineAngles(teeth, deg(one)) : "With --teeth give --arm-at one angle only.";
}

function sentenceOf(problem: SizeProblem): string {
  return problem.kind === "tooMany"
    ? `That makes ${problem.combinations} combinations, and ${problem.most} are the most that are tried; give fewer holes or angles.`
    : "Give the deflection to reach: --up, --down or both, above 0.";
}
