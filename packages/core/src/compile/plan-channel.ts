import type { Model } from "../model/model.ts";
import type { PlanChannel, Position } from "../plan/setup-plan.ts";
import { checkLeverage } from "./check-leverage.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import type { Entry } from "./entry-grid.ts";
import type { Controls } from "./motion.ts";
import type { Output } from "./output.ts";
import type { PlanCurve } from "./plan-curve.ts";
import { planDoubt } from "./plan-doubt.ts";
import { planExtremes } from "./plan-extremes.ts";
import { listLoads, planLoad } from "./plan-load.ts";
import { planPowerUp } from "./plan-power-up.ts";
import { planSettings } from "./plan-setting.ts";
import { planSummed } from "./plan-summed.ts";
import { remarkAdds } from "./remark-adds.ts";
import type { Report } from "./report.ts";

/**
 * Everything to enter on one channel. Undefined where the channel cannot even rest or fail safe; what is out of reach is
 * reported and left out.
 */
export function planChannel(
  output: Output,
  wishes: readonly EnteredWish[],
  complete: boolean,
  curve: PlanCurve | undefined,
  model: Model,
  controls: Controls,
  report: Report,
): PlanChannel | undefined {
  const neutral = wishes.find(({ wish }) => wish.together === "rest");
  const failsafe = wishes.find(({ wish }) => wish.together === "failsafe");
  if (neutral === undefined || failsafe === undefined) return undefined;
  const own = wishes.filter(({ wish }) => wish.together === undefined);
  const loads = listLoads(output, own, model, controls);
  const load = planLoad(output, own, loads, report);
  checkLeverage(output, wishes, loads, report);
  const doubt = planDoubt(output, own);
  const summed = planSummed(output, controls, report);
  const powerUp = planPowerUp(output, model.radio, neutral.wish.place, report);
  const rigs = output.members.map(({ rig }) => rig);
  const settings = own.flatMap((wish) => planSettings(output, wish, wishes, loads, model.radio));
  remarkAdds(output, settings, model.radio, report);
  const labels = rigs.flatMap(({ named }) =>
    named.servo.label === undefined ? [] : [[named.id, named.servo.label]],
  );
  return {
    channel: output.channel,
    servos: rigs.map(({ named }) => named.id),
    ...(labels.length === 0 ? {} : { labels: Object.fromEntries(labels) }),
    direction: output.travel.rising ? "rising" : "falling",
    safeUs: output.safeUs,
    guardUs: output.guardUs,
    limits: output.grid.limits,
    neutral: position(neutral.entry),
    ...curve,
    settings,
    ...(summed === undefined ? {} : { summed }),
    extremes: planExtremes(output, model.radio, controls, complete, report),
    ...(doubt === undefined ? {} : { doubt }),
    ...(load === undefined ? {} : { load }),
    ...(powerUp === undefined ? {} : { powerUp }),
    failsafe: position(failsafe.entry),
  };
}

function position({ percent, pulseUs, sharePercent }: Entry): Position {
  return { percent, pulseUs, sharePercent };
}
