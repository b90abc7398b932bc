import { canonicalJson, type Proposal } from "@hingeline/core";
import { type SizeFacts, sizeCautions } from "./size-to-text.ts";

/** The proposals as canonical JSON (RFC 8785) and a line feed, units in the keys; signs are those of a model. */
export function sizeToJson({ result: { proposals, ...counts } }: SizeFacts): string {
  return `${canonicalJson({ ...counts, proposals: proposals.map(withUnits), cautions: sizeCautions })}\n`;
}

function withUnits(proposal: Proposal) {
  return {
    linkage: proposal.linkage,
    armMm: proposal.arm,
    armAngleDeg: proposal.armAngle,
    armAtDeg: proposal.armAt,
    levelRotationDeg: proposal.levelRotation,
    hornMm: proposal.horn,
    hornAtDeg: proposal.hornAt,
    rodMm: proposal.rod,
    rotationUpDeg: proposal.rotationUp,
    rotationDownDeg: proposal.rotationDown,
    ratioUp: proposal.ratioUp,
    ratioLevel: proposal.ratioLevel,
    ratioDown: proposal.ratioDown,
    worstRatio: proposal.worstRatio,
    worstSine: proposal.worstSine,
    steepestDegPerUs: proposal.steepest,
    unevenness: proposal.unevenness,
    score: proposal.score,
  };
}
