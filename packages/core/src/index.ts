export type { Address } from "./address/address.ts";
export { formatAddress, parseAddress } from "./address/address.ts";
export type { BenchNext, BenchPoint, BenchProgress, WantedDeflection } from "./compile/bench-progress.ts";
export { benchAddresses, benchProgress } from "./compile/bench-progress.ts";
export { compile } from "./compile/compile.ts";
export type {
  LinkagePicture,
  LinkageStand,
  MeasuredResponse,
  ServoDescription,
} from "./compile/describe-servos.ts";
export { describeServos } from "./compile/describe-servos.ts";
export { type MeasuredRadio, measureRadio, type StatedRadio } from "./compile/measure-radio.ts";
export { orderOfEntry } from "./compile/order-of-entry.ts";
export { type EnteredValue, type Port, type PortedValue, portModel } from "./compile/port-plan.ts";
export type { Remedy, Unreachable } from "./compile/port-remedies.ts";
export { type ServoSwap, type ServoSwapProblem, swapServo } from "./compile/swap-servo.ts";
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
export type { AsBuilt, AsBuiltChannel, AsBuiltSetting, AsRead } from "./plan/as-built.ts";
export { asBuiltTemplate } from "./plan/as-built-template.ts";
export { canonicalJson } from "./plan/canonical-json.ts";
export { fingerprintOf, revisionOf } from "./plan/fingerprint.ts";
export type {
  AddedPlace,
  ComputedPart,
  PlanChange,
  SettingAt,
  SettingValue,
  ValueName,
} from "./plan/plan-change.ts";
export { diffPlans } from "./plan/plan-diff.ts";
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
export type { DeflectionAt } from "./plan/verify/observed.ts";
export type {
  Cause,
  CauseKind,
  ChannelPlace,
  DeflectionVerdict,
  LineVerdict,
  MatchVerdict,
  Outcome,
  PulseVerdict,
  SettingPlace,
  Verification,
} from "./plan/verify/verification.ts";
export { type VerifyOptions, verify } from "./plan/verify/verify.ts";
export { type ChannelCheck, type VerifyAgain, verifyAgain } from "./plan/verify-again.ts";
export { type HalfPulse, halfPulse } from "./response/half-pulse.ts";
export type { Response } from "./response/response.ts";
export type { SwapMap, SwapTest } from "./response/servo-swap.ts";
export type { CalibrationProblem, ReceiverReading, ScaleKink } from "./signal/calibrate-scale.ts";
export {
  gridNeighbours,
  type PulseRange,
  type Rounding,
  roundInside,
  roundInward,
  roundPercent,
} from "./signal/grid.ts";
export { toPercent, toPulse } from "./signal/percent.ts";
export type { ScaleProblem } from "./signal/scale-problems.ts";
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
