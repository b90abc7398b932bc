import { type Drive, isLinkageProblem } from "../linkage/drive.ts";
import type { Linkage } from "../linkage/linkage.ts";
import type { LinkageResponse, ShaftLine } from "../response/drive-response.ts";
import { explainMisfit } from "../response/explain-misfit.ts";
import { type FitProblem, fitLinkage } from "../response/fit-linkage.ts";
import { responseFromLinkage } from "../response/from-linkage.ts";
import type { Response } from "../response/response.ts";
import { degPerUs, us } from "../units/quantity.ts";
import { driveOf } from "./drive-of.ts";
import { describeExplanation, describeLinkageProblem, endWords } from "./linkage-words.ts";
import type { ReadResponse } from "./read-response.ts";
import type { Report } from "./report.ts";
import type { ResolvedBench } from "./resolve-bench.ts";
import type { NamedServo } from "./resolve-names.ts";

/** A servo's linkage, set to its pulses. */
export interface Linked {
  readonly drive: Drive;
  readonly line: ShaftLine;
  /** From the linkage alone, or its shape fitted to the readings; absent where they do not agree and the readings stand alone. */
  readonly response?: Response;
}

/**
 * The response from a servo's linkage. Without readings from the linkage alone; with readings its shape fitted to
 * them. Undefined where there is no linkage to use; `"contradicts"` where it cannot be as declared, which is reported.
 */
export function linkServo(
  named: NamedServo,
  bench: ResolvedBench,
  read: ReadResponse | undefined,
  doubtDeg: number,
  report: Report,
): Linked | undefined | "contradicts" {
  const { linkage, type, turns } = named.servo;
  if (linkage === undefined) return undefined;
  const at = [...named.address, "linkage"];
  const drive = driveOf(linkage);
  if (isLinkageProblem(drive)) {
    report("linkage-impossible", at, { servo: named.id, problem: describeLinkageProblem(drive) });
    return "contradicts";
  }
  const sense = turns === "anticlockwise" ? -1 : 1;
  const rotation = type?.rotation === undefined || turns === undefined ? undefined : sense * type.rotation;
  if (read === undefined) return fromLinkageAlone(named, bench, linkage, drive, rotation, report);
  return fromReadings(named, bench, linkage, drive, rotation, read, doubtDeg, report);
}

function fromLinkageAlone(
  named: NamedServo,
  bench: ResolvedBench,
  linkage: Linkage,
  drive: Drive,
  rotation: number | undefined,
  report: Report,
): Linked | "contradicts" {
  const at = [...named.address, "linkage"];
  if (rotation === undefined) {
    report("linkage-needs-rotation", at, { servo: named.id });
    return "contradicts";
  }
  const [lowUs, highUs] = bench.stopsUs;
  const setting = {
    level: us(bench.levelUs),
    rotation: degPerUs(rotation),
    pulses: [us(lowUs), us(highUs)] as const,
  };
  const linked = responseFromLinkage(drive, setting);
  if (linked === undefined) {
    // At level it stands at its end, as a track does that is fully in: only the other way is any left.
    reportTurns(named, report);
    return "contradicts";
  }
  if (linked.response.rising !== bench.rising) {
    reportTurns(named, report);
    return "contradicts";
  }
  reportCuts(named, bench, linkage, linked, report);
  return linked;
}

function fromReadings(
  named: NamedServo,
  bench: ResolvedBench,
  linkage: Linkage,
  drive: Drive,
  rotation: number | undefined,
  read: ReadResponse,
  doubtDeg: number,
  report: Report,
): Linked | undefined | "contradicts" {
  const start = { levelUs: bench.levelUs, ...(rotation === undefined ? {} : { degPerUs: rotation }) };
  const fit = fitLinkage(linkage, read.points, doubtDeg, start);
  if ("kind" in fit) return reportFit(named, linkage, fit, report);
  const at = [...named.address, "linkage"];
  const { drive: fitted, line, response, agreement, largestDeg } = fit;
  if (agreement.agrees) {
    reportCuts(named, bench, linkage, fit, report);
    return { drive: fitted, line, response };
  }
  const misfit = explainMisfit(linkage, read.points, doubtDeg, start);
  const guesses = (misfit?.explanations ?? []).map(describeExplanation);
  report("linkage-misfit", at, { servo: named.id, largestDeg, guesses: guesses.join("; or ") });
  return { drive, line };
}

function reportFit(
  named: NamedServo,
  linkage: Linkage,
  problem: FitProblem,
  report: Report,
): undefined | "contradicts" {
  const at = [...named.address, "linkage"];
  switch (problem.kind) {
    case "linkage":
      report("linkage-impossible", at, { servo: named.id, problem: describeLinkageProblem(problem.problem) });
      return "contradicts";
    case "turnsOtherWay":
      reportTurns(named, report);
      return "contradicts";
    case "readingOutOfReach":
      report("reading-out-of-reach", at, {
        servo: named.id,
        pulseUs: problem.pulseUs,
        deflectionDeg: problem.deflectionDeg,
        rotationDeg: problem.rotationDeg,
        endDeg: problem.end.rotation,
        end: endWords(problem.end.kind, linkage.kind),
      });
      return undefined;
    case "tooFewReadings":
      report("linkage-not-fitted", at, { servo: named.id, pulses: problem.pulses, needed: problem.needed });
      return undefined;
    case "noFit":
      report("linkage-fits-nothing", at, { servo: named.id });
      return undefined;
  }
}

function reportTurns(named: NamedServo, report: Report): void {
  report("turns-other-way", [...named.address, "turns"], {
    servo: named.id,
    turns: named.servo.turns ?? "clockwise",
  });
}

/** Where the linkage comes to its end inside the safe pulses. */
function reportCuts(
  named: NamedServo,
  bench: ResolvedBench,
  linkage: Linkage,
  { cut }: LinkageResponse,
  report: Report,
): void {
  for (const one of [cut.low, cut.high]) {
    if (one === undefined || one.pulse <= bench.safeUs[0] || one.pulse >= bench.safeUs[1]) continue;
    report("linkage-ends", [...named.address, "linkage"], {
      servo: named.id,
      pulseUs: one.pulse,
      rotationDeg: one.end.rotation,
      deflectionDeg: one.end.deflection,
      end: endWords(one.end.kind, linkage.kind),
      lowUs: bench.safeUs[0],
      highUs: bench.safeUs[1],
    });
  }
}
