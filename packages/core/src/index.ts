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
export type { Heat } from "./compile/heat.ts";
export { type DoubtOptions, listDoubts, type SettingDoubt } from "./compile/list-doubts.ts";
export { type MeasuredRadio, measureRadio, type StatedRadio } from "./compile/measure-radio.ts";
export { orderOfEntry } from "./compile/order-of-entry.ts";
export { type EnteredValue, type Port, type PortedValue, portModel } from "./compile/port-plan.ts";
export type { Remedy, Unreachable } from "./compile/port-remedies.ts";
export type { DrawnDoubt, DrawOptions } from "./compile/simulate-position.ts";
export { type ServoSwap, type ServoSwapProblem, swapServo } from "./compile/swap-servo.ts";
export type { Finding, Severity } from "./findings/finding.ts";
export type { FindingCode } from "./findings/make-finding.ts";
export { ballRodFromRule, type RuleMeasurements } from "./linkage/ball-rod-from-rule.ts";
export { type Dimension, dimensionsOf } from "./linkage/dimensions.ts";
export {
  type Drawing,
  type Drive,
  type DriveEnd,
  type DriveEndKind,
  type DriveRange,
  type ExtensionDrive,
  isLinkageProblem,
  type LinkageProblem,
  type RodStand,
  type Segment,
} from "./linkage/drive.ts";
export { drive } from "./linkage/drives.ts";
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
  type NoseClearance,
  noseClearance,
  type SectionPoint,
  type Slot,
  slotGapAt,
} from "./linkage/nose-clearance.ts";
export {
  type Proposal,
  type SizePreferences,
  type SizeProblem,
  type SizeResult,
  size,
} from "./linkage/size.ts";
export type { Candidate, CandidateFault, SizeVerdict } from "./linkage/size-candidate.ts";
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
export { nearestName } from "./model/nearest-name.ts";
export type { AsBuilt, AsBuiltChannel, AsBuiltSetting, AsRead } from "./plan/as-built.ts";
export { asBuiltTemplate } from "./plan/as-built-template.ts";
export { canonicalJson } from "./plan/canonical-json.ts";
export { fingerprintOf, revisionOf } from "./plan/fingerprint.ts";
export { hasErrors } from "./plan/has-errors.ts";
export type {
  AddedPlace,
  BeforeAfter,
  ComputedPart,
  PlanChange,
  SettingAt,
  SettingValue,
  ValueName,
} from "./plan/plan-change.ts";
export { diffPlans } from "./plan/plan-diff.ts";
export type {
  Assumed,
  ChannelPulses,
  CurvePoint,
  DoubtCause,
  Edit,
  Enter,
  Extreme,
  Load,
  PercentPulse,
  PlanChannel,
  PlanControl,
  PlanDoubt,
  PlanGang,
  PlanInTheMaking,
  PlanMatch,
  PlanRadio,
  Position,
  ProcedureStep,
  Setting,
  SettingLoad,
  SetupPlan,
  Summed,
  Transit,
} from "./plan/setup-plan.ts";
export { typedPercent } from "./plan/typed-percent.ts";
export type { DeflectionAt } from "./plan/verify/observed.ts";
export type {
  Cause,
  CauseKind,
  ChannelPlace,
  DeflectionVerdict,
  LinePlace,
  LineVerdict,
  MatchVerdict,
  Outcome,
  PulseVerdict,
  SettingPlace,
  Verification,
} from "./plan/verify/verification.ts";
export { type VerifyOptions, verify } from "./plan/verify/verify.ts";
export { type ChannelCheck, type VerifyAgain, verifyAgain } from "./plan/verify-again.ts";
export {
  type Cut,
  type Cuts,
  DEAD_CENTRE_MARGIN_DEG,
  type LinkageResponse,
  rotationOf,
  type ShaftLine,
} from "./response/drive-response.ts";
export { type Explanation, explainMisfit, type Misfit } from "./response/explain-misfit.ts";
export type { NotMonotoneProblem } from "./response/find-turns.ts";
export {
  type Agreement,
  type FitProblem,
  type FitResidual,
  fitLinkage,
  type LinkageFit,
  type ReadingOutOfReach,
} from "./response/fit-linkage.ts";
export { type Estimate, type FitPoint, type FitStart, ROTATION_DOUBT } from "./response/fit-shape.ts";
export { responseFromLinkage, type ServoSetting } from "./response/from-linkage.ts";
export { type ReadingProblem, type ReadingsResult, responseFromReadings } from "./response/from-readings.ts";
export { type HalfPulse, halfPulse } from "./response/half-pulse.ts";
export type { ReadingDoubts } from "./response/leave-one-out.ts";
export type { DuplicateProblem, Hysteresis, ReadingPoint, ServoReading } from "./response/merge-readings.ts";
export { type NextReading, nextReading, type WantedDoubt } from "./response/next-reading.ts";
export type { Response } from "./response/response.ts";
export type { SwapMap, SwapProblem, SwapTest } from "./response/servo-swap.ts";
export type { SuspiciousProblem } from "./response/suspicious-reading.ts";
export {
  type CalibrationProblem,
  calibrateScale,
  type ReadingResidual,
  type ReceiverReading,
  type ScaleCalibration,
  type ScaleKink,
} from "./signal/calibrate-scale.ts";
export type { BothSides } from "./signal/fit-scale.ts";
export {
  gridNeighbours,
  type PercentRange,
  type PulseRange,
  type Rounding,
  roundInside,
  roundInward,
  roundPercent,
} from "./signal/grid.ts";
export { toPercent, toPulse } from "./signal/percent.ts";
export { type ScaleProblem, scaleProblems } from "./signal/scale-problems.ts";
export { shareScale } from "./signal/share-scale.ts";
export type { SignalScale } from "./signal/signal-scale.ts";
export { airDensity, dynamicPressurePa, type FlyingField, SEA_LEVEL_DENSITY } from "./surface/air.ts";
export { fightingTorque } from "./surface/fighting-torque.ts";
export { freePlayAngle, MOST_PLAY, type PlayUse } from "./surface/free-play.ts";
export {
  coefficientsPerDeg,
  type FlapCoefficients,
  type FlapSize,
  flapCoefficients,
  type HingeCoefficients,
  hingeMoment,
} from "./surface/hinge-moment.ts";
export { MATERIALS, type Material } from "./surface/materials.ts";
export {
  type MeterAngle,
  type MeterKind,
  type MeterProblem,
  type MeterSetting,
  shownDeflection,
  trueDeflection,
} from "./surface/meter.ts";
export { rodForce } from "./surface/rod-force.ts";
export { bucklingForce, type RodEnds, type RodMake } from "./surface/rod-strength.ts";
export {
  limitSpeed,
  type RatedTorque,
  type ServoLoad,
  servoLoad,
  torqueAtSupply,
  USUAL_SHARE,
} from "./surface/servo-load.ts";
export { servoStiffness, stiffnessInSeries, swingFrequencyHz, USUAL_GIVE } from "./surface/stiffness.ts";
export {
  type ServoCurrent,
  type SupplyDemand,
  supplyDemand,
  USUAL_HOLDING,
} from "./surface/supply-demand.ts";
export {
  type RodGrowth,
  rodShift,
  servoDrift,
  thermalShift,
  USUAL_DRIFT_US_PER_K,
} from "./surface/thermal-shift.ts";
export {
  deflectionForThrow,
  type ThrowBy,
  type TrailingEdge,
  throwAt,
  throwMmPerDegAt,
} from "./surface/throw.ts";
export { trackForce, trackTorque, USUAL_FRICTION } from "./surface/track-load.ts";
export { findWeakestPart, type LoadedPart, type WeakestPart } from "./surface/weakest-part.ts";
export { applyEdits, type TransmitterEdit } from "./transmitter/apply-edits.ts";
export { type FactoryFacts, factoryState } from "./transmitter/factory-state.ts";
export { outputOverTime, outputs } from "./transmitter/outputs.ts";
export { reach } from "./transmitter/reach.ts";
export type {
  ControlContribution,
  ControlPositions,
  CurveKnot,
  Device,
  EndPoints,
  OutputMemory,
  Transmitter,
} from "./transmitter/transmitter.ts";
export {
  differenceDoubt,
  isEqualWithinDoubt,
  judgeTolerance,
  type ToleranceVerdict,
} from "./uncertainty/agreement.ts";
export { coverageFactor } from "./uncertainty/coverage-factor.ts";
export { type DeflectionCauses, deflectionDoubt, positionDoubt } from "./uncertainty/deflection-doubt.ts";
export { type Distribution, draw } from "./uncertainty/draw.ts";
export {
  type CombinedDoubt,
  type ExpandedDoubt,
  expand,
  expandTo,
  USUAL_FACTOR,
} from "./uncertainty/expand.ts";
export { type GuardCauses, guardSpanUs } from "./uncertainty/guard.ts";
export { linearise, type UncertainInput } from "./uncertainty/linearise.ts";
export {
  type BudgetLine,
  type Contribution,
  type Correlation,
  type CorrelationProblem,
  type Propagated,
  propagate,
  propagateCorrelated,
  sharedCorrelation,
} from "./uncertainty/propagate.ts";
export { propagateDifference } from "./uncertainty/propagate-difference.ts";
export { type PulseCauses, pulseDoubt } from "./uncertainty/pulse-doubt.ts";
export { type Random, seededRandom } from "./uncertainty/random.ts";
export { type Simulation, simulate, type Trial } from "./uncertainty/simulate.ts";
export {
  type SettledSimulation,
  type SettleOptions,
  simulateUntilSettled,
} from "./uncertainty/simulate-until-settled.ts";
export {
  doubtFromExpanded,
  doubtFromRectangular,
  doubtFromRepeated,
  doubtFromScatter,
  doubtFromStep,
  doubtFromTriangular,
  type RepeatedDoubt,
} from "./uncertainty/standard-doubt.ts";
export { type Interval, type Summary, summarise } from "./uncertainty/summarise.ts";
export { isLinearValid, type LinearResult, linearExcess } from "./uncertainty/validate-linear.ts";
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
export {
  type Format,
  formatAmps,
  formatCelsius,
  formatDeg,
  formatDegPerS,
  formatDegPerUs,
  formatGrams,
  formatMetres,
  formatMm,
  formatMps,
  formatNewtons,
  formatNm,
  formatNumber,
  formatPercent,
  formatSeconds,
  formatTrimmed,
  formatUs,
  formatVolts,
  type UnitStyle,
} from "./units/format.ts";
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
