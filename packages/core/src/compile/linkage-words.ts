import type { DriveEndKind, LinkageProblem } from "../linkage/drive.ts";
import type { Linkage } from "../linkage/linkage.ts";
import type { Explanation } from "../response/explain-misfit.ts";
import { formatTrimmed } from "../units/format.ts";

/** What stands at the end of a linkage's range. In a chain one of its links comes to this. */
export function endWords(kind: DriveEndKind, of: Linkage["kind"]): string {
  switch (kind) {
    case "deadCentreHorn":
      return deadCentreWords[of] ?? "rod and horn come into line, a dead centre";
    case "turnsBack":
      return turnWords[of];
    case "cannotAssemble":
      return "the rod stands square to its track and reaches no further";
    case "trackEnd":
      return "the carriage meets the end of its track";
    case "full":
      return "half a turn is done";
  }
}

const deadCentreWords: { readonly [Kind in Linkage["kind"]]?: string } = {
  cables: "the pulling cable and the horn come into line, a dead centre",
  chain: "one of its links comes to a dead centre",
};

const turnWords: Readonly<Record<Linkage["kind"], string>> = {
  pushrod: "arm and rod come into line and the surface turns back",
  ballRod: "arm and rod, seen along the shaft, come into line and the surface turns back",
  track: "arm and rod come into line and the carriage turns back",
  bentRod: "the bent tip stands furthest out and the surface turns back",
  cables: "the pulling cable comes into line with its pin and the shaft, and the surface turns back",
  torqueRod: "the surface turns back",
  chain: "one of its links turns back, and the surface with it",
};

/** Why a linkage cannot be as declared, as the end of a sentence. */
export function describeLinkageProblem(problem: LinkageProblem): string {
  switch (problem.kind) {
    case "notALength":
      return `"${problem.name}" is ${n(problem.lengthMm)} mm, which is no length`;
    case "cannotAssemble":
      return `a rod of ${n(problem.rodMm)} mm does not fit with the arm at level; ${n(problem.shortestMm)} to ${n(problem.longestMm)} mm would`;
    case "deadCentreAtLevel":
      return "at level rod and horn are in line, a dead centre, or the horn's pin stands on the line of the shaft";
    case "bendOutOfRange":
      return `a bend of ${n(problem.bendDeg)} deg with a skew of ${n(problem.skewDeg)} deg moves nothing: the bend is above 0 and at most 90, and the tip lies off the hinge line, at level and half a turn on`;
    case "camNotMonotone":
      return `the cam of the track turns back at ${n(problem.extensionMm)} mm`;
    case "camTooShort":
      return `the table of the track runs from ${n(problem.fromMm)} to ${n(problem.camMm)} mm, the track from 0 to ${n(problem.travelMm)} mm`;
    case "offTrackAtLevel":
      return `the carriage would stand at ${n(problem.extensionMm)} mm at level, off its track of ${n(problem.travelMm)} mm`;
    case "noLinks":
      return "the chain has no links";
    case "link":
      return `in link ${problem.index + 1} of the chain, ${describeLinkageProblem(problem.problem)}`;
    case "linkOutOfReach":
      return `link ${problem.index + 1} of the chain is turned ${n(problem.rotationDeg)} deg by those before it, where it does not reach`;
  }
}

/** `arm 12.03 mm rather than 10 mm`. */
export function describeExplanation({ of, path, unit, declared, fitted }: Explanation): string {
  const decimals = unit === "degPerUs" ? 4 : 1;
  const word = unit === "degPerUs" ? "deg/us" : unit;
  const name = of === "servo" ? "rotation" : path.join(".");
  return `${name} ${formatTrimmed(fitted, decimals)} rather than ${formatTrimmed(declared, decimals)} ${word}`;
}

function n(value: number): string {
  return formatTrimmed(value, 1);
}
