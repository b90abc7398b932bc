import type { Radio } from "../model/model.ts";
import type { Extreme, PlanChannel } from "../plan/setup-plan.ts";
import { toPercent } from "../signal/percent.ts";
import { us } from "../units/quantity.ts";
import { type Controls, extremeSum, restPosition, type State, sumMoves } from "./motion.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import { nameState } from "./state-names.ts";

/**
 * The furthest pulses that any combination of controls asks of a channel. A combination that asks for more than is safe or
 * measured is reported, with what is lost; its pulse is then the limit, which is where the channel ends.
 */
export function planExtremes(
  output: Output,
  radio: Radio,
  controls: Controls,
  settingsComplete: boolean,
  report: Report,
): PlanChannel["extremes"] {
  const extreme = (sign: -1 | 1): Extreme => {
    const { value, state } = extremeSum(output.motion.moves, controls, sign);
    const [lowest, highest] = output.openPlaces;
    const end = sign < 0 ? lowest : highest;
    const past = sign * (value - end) > 1e-9;
    // Where a single setting already passes, that is the finding; its sums add nothing.
    if (past && settingsComplete) reportPast(output, value, end, state, radio, controls, report);
    const asked = past ? undefined : output.travel.pulseAt(value);
    const { low, high } = output.grid.limits;
    const limit = sign > 0 === output.travel.rising ? high : low;
    const when = nameState(controls, state);
    const pulseUs = asked ?? limit.pulseUs;
    // A limit on the grid ends a little before the last safe pulse.
    if (pulseUs <= low.pulseUs) return { ...low, when };
    if (pulseUs >= high.pulseUs) return { ...high, when };
    return { pulseUs, percent: toPercent(radio, us(pulseUs)), when };
  };
  const lowest = extreme(-1);
  const highest = extreme(1);
  return output.travel.rising ? { low: lowest, high: highest } : { low: highest, high: lowest };
}

function reportPast(
  output: Output,
  asked: number,
  end: number,
  state: State,
  radio: Radio,
  controls: Controls,
  report: Report,
): void {
  const { motion, travel } = output;
  const combination = Object.entries(nameState(controls, state))
    .map(([name, position]) => `${name} ${position}`)
    .join(", ");
  const lost = Math.abs(asked - end);
  const shares = [...state.keys()].map((control) => {
    const without = sumMoves(
      motion.moves,
      controls,
      new Map(state).set(control, restPosition(controls.get(control))),
    );
    return { control, share: Math.abs(asked - without) };
  });
  const losers = shares
    .filter(({ share }) => share > 0)
    .map(({ control, share }) => `${control} ${Math.min(100, (lost / share) * 100).toFixed(0)} %`)
    .join(" or ");
  report(radio.endPoints === "clamp" ? "combination-cut" : "combination-passes", ["surfaces", motion.name], {
    surface: motion.name,
    combination,
    asked,
    end,
    lost,
    unit: travel.unit,
    losers,
  });
}
