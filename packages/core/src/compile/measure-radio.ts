import type { Radio } from "../model/model.ts";
import {
  type CalibrationProblem,
  calibrateScale,
  type ReceiverReading,
  type ScaleCalibration,
} from "../signal/calibrate-scale.ts";
import { type ScaleProblem, scaleProblems } from "../signal/scale-problems.ts";
import { expand } from "../uncertainty/expand.ts";
import { decimalsFor, timesStep } from "../units/decimals.ts";
import { type Percent, pct, type Us, us } from "../units/quantity.ts";

/** What readings at the receiver cannot tell of a radio. */
export interface StatedRadio extends Pick<Radio, "name" | "step" | "endPoints" | "curvePoints"> {
  /** Left out, as far as the pulse followed the percent on both sides. */
  readonly reach?: Percent;
}

/** A radio for a model, with its doubts, k = 2, and how the readings lie about it. */
export interface MeasuredRadio {
  readonly kind: "measured";
  /** Centre and span with the decimals that their doubt deserves. */
  readonly radio: Radio;
  readonly centreUncertaintyUs: number;
  readonly per100UncertaintyUs: number | { readonly below: number; readonly above: number };
  readonly calibration: ScaleCalibration;
}

/**
 * The description of a radio from three readings or more of the pulse at the receiver, for a channel that has neither limits nor a
 * shift and is not reversed.
 * @param doubt half-width of each reading's doubt
 */
export function measureRadio(
  readings: readonly ReceiverReading[],
  doubt: Us,
  { reach, ...stated }: StatedRadio,
): MeasuredRadio | CalibrationProblem | ScaleProblem {
  const calibration = calibrateScale(readings, doubt);
  if (calibration.kind !== "calibrated") return calibration;
  const { centre, per100, centreDoubtUs, per100DoubtUs } = calibration;
  // The error of the pulse meter itself is in every reading alike, and no number of readings takes it out of the centre.
  const centreUncertaintyUs = expand(Math.max(centreDoubtUs, doubt / Math.sqrt(3)));
  const [below, above] = typeof per100DoubtUs === "number" ? [] : [per100DoubtUs.below, per100DoubtUs.above];
  const per100UncertaintyUs =
    typeof per100DoubtUs === "number"
      ? expand(per100DoubtUs)
      : { below: expand(per100DoubtUs.below), above: expand(per100DoubtUs.above) };
  const radio: Radio = {
    ...stated,
    centre: rounded(centre, centreUncertaintyUs),
    per100:
      typeof per100 === "number"
        ? rounded(per100, typeof per100UncertaintyUs === "number" ? per100UncertaintyUs : 0)
        : {
            below: rounded(per100.below, expand(below ?? 0)),
            above: rounded(per100.above, expand(above ?? 0)),
          },
    reach: reach ?? followedTo(calibration, readings, stated.step),
  };
  const [problem] = scaleProblems(radio);
  return problem ?? { kind: "measured", radio, centreUncertaintyUs, per100UncertaintyUs, calibration };
}

function rounded(valueUs: number, uncertaintyUs: number): Us {
  return us(Number(valueUs.toFixed(decimalsFor(uncertaintyUs) ?? EXACT_DECIMALS)));
}

/** Decimals of a scale whose readings are without any doubt. */
const EXACT_DECIMALS = 3;

/** The largest percent up to which the pulse followed on either side that was read, on the radio's step. */
function followedTo(
  { kinks }: ScaleCalibration,
  readings: readonly ReceiverReading[],
  step: Percent,
): Percent {
  const percents = readings.map(({ percent }) => percent);
  const endOf = (where: "low" | "high", readPercent: number) =>
    Math.abs(kinks.find((kink) => kink.where === where)?.meetsPercent ?? readPercent);
  const [lowest, highest] = [Math.min(...percents), Math.max(...percents)];
  const sides = [
    ...(lowest < 0 ? [endOf("low", lowest)] : []),
    ...(highest > 0 ? [endOf("high", highest)] : []),
  ];
  const steps = Math.floor(Math.min(...sides) / step + 1e-9);
  return pct(timesStep(steps, step));
}
