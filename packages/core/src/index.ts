export type { Address } from "./address/address.ts";
export { formatAddress, parseAddress } from "./address/address.ts";
export { compile } from "./compile/compile.ts";
export type {
  LinkagePicture,
  LinkageStand,
  MeasuredResponse,
  ServoDescription,
} from "./compile/describe-servos.ts";
export { describeServos } from "./compile/describe-servos.ts";
export type { Finding, Severity } from "./findings/finding.ts";
export { ballRodFromRule, type RuleMeasurements } from "./linkage/ball-rod-from-rule.ts";
export type { Drawing, Segment } from "./linkage/drive.ts";
export type {
  Axis,
  BallRod,
  BentRod,
  Cables,
  Cam,
  Chain,
  Linkage,
  Point,
  Pushrod,
  TorqueRod,
  Track,
} from "./linkage/linkage.ts";
export {
  type Proposal,
  type SizePreferences,
  type SizeProblem,
  type SizeResult,
  size,
} from "./linkage/size.ts";
export type { Candidate, CandidateFault, Verdict } from "./linkage/size-candidate.ts";
export type { SizePlace, SizeTask } from "./linkage/size-task.ts";
export { splineAngles } from "./linkage/spline-angles.ts";
export type {
  Airspeed,
  AtExtension,
  AtPart,
  AtPulse,
  AtThrow,
  Bench,
  Control,
  ControlState,
  Group,
  Instruments,
  Measured,
  MeasuredStop,
  Model,
  Moves,
  PerMoves,
  Place,
  Radio,
  Reading,
  Rod,
  Selector,
  SelectorMoves,
  Servo,
  ServoType,
  Stick,
  StickMoves,
  Stop,
  StopReason,
  Surface,
} from "./model/model.ts";
export { canonicalJson } from "./plan/canonical-json.ts";
export type {
  CurvePoint,
  Edit,
  Enter,
  Extreme,
  Load,
  PercentPulse,
  PlanChannel,
  PlanGang,
  PlanMatch,
  PlanRadio,
  ProcedureStep,
  Setting,
  SettingLoad,
  SetupPlan,
  Transit,
} from "./plan/setup-plan.ts";
export { type HalfPulse, halfPulse } from "./response/half-pulse.ts";
export type { Response } from "./response/response.ts";
export {
  gridNeighbours,
  type PulseRange,
  type Rounding,
  roundInside,
  roundInward,
  roundPercent,
} from "./signal/grid.ts";
export { toPercent, toPulse } from "./signal/percent.ts";
export type { SignalScale } from "./signal/signal-scale.ts";
export { deflectionForThrow, type TrailingEdge, throwAt } from "./surface/throw.ts";
export {
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
} from "./units/conversions.ts";
export { decimalsFor, decimalsOf } from "./units/decimals.ts";
export { formatNumber, formatTrimmed } from "./units/format.ts";
export type {
  Amps,
  Celsius,
  Deg,
  DegPerS,
  DegPerUs,
  Grams,
  Metres,
  Mm,
  Mps,
  Newtons,
  Nm,
  Percent,
  Quantity,
  Seconds,
  Us,
  Volts,
} from "./units/quantity.ts";
export {
  amps,
  celsius,
  deg,
  degPerS,
  degPerUs,
  grams,
  m,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  us,
  volts,
} from "./units/quantity.ts";
