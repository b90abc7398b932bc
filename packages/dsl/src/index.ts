export type {
  Amps,
  Celsius,
  Deg,
  DegPerS,
  DegPerUs,
  Grams,
  Metres,
  Mm,
  Model,
  Mps,
  Newtons,
  Nm,
  Percent,
  Seconds,
  Us,
  Volts,
} from "@hingeline/core";
export {
  amps,
  ballRodFromRule,
  celsius,
  deg,
  degPerS,
  degPerUs,
  fromFoot,
  fromInch,
  fromKgfCm,
  fromKmPerH,
  fromKnots,
  fromMph,
  fromOunce,
  fromOzfIn,
  fromRad,
  fromSecondsPer60Deg,
  grams,
  m,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  toFoot,
  toInch,
  toKgfCm,
  toKmPerH,
  toKnots,
  toMph,
  toOunce,
  toOzfIn,
  toRad,
  toSecondsPer60Deg,
  us,
  volts,
} from "@hingeline/core";
export { selector, stick } from "./declare/controls.ts";
export type { Matched, Together } from "./declare/groups.ts";
export { matched, together } from "./declare/groups.ts";
export { ballRod, bentRod, cables, chain, pushrod, torqueRod, track } from "./declare/linkages.ts";
export type { Mistake } from "./declare/mistake.ts";
export type { DeclaredModel } from "./declare/model.ts";
export { model } from "./declare/model.ts";
export type {
  AirspeedSpec,
  Controls,
  DetentOf,
  FailsafeSpec,
  GroupSpec,
  ModelSpec,
  MovesSpec,
  OneServo,
  SelectorName,
  SeveralServos,
  SurfaceSpec,
  YieldsSpec,
} from "./declare/model-spec.ts";
export type { PlaceSpec, SelectorMovesOf, SelectorPer, StickMovesOf, StickPer } from "./declare/per.ts";
export { per } from "./declare/per.ts";
export { atExtension, atPart, atPulse, atThrow, stopAt } from "./declare/places.ts";
export type { DetentsOf, Entered, PositionOf, Setup } from "./declare/plan.ts";
export { PlanRefused, plan } from "./declare/plan.ts";
