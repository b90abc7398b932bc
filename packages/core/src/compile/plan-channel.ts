import type { Model } from "../model/model.ts";
import type { PercentPulse, PlanChannel } from "../plan/setup-plan.ts";
import { type EnteredWish, reachPlace } from "./enter-wishes.ts";
import type { Entry } from "./entry-grid.ts";
import { type Controls, restState, type State, sumMoves } from "./motion.ts";
import type { Output } from "./output.ts";
import { planDoubt } from "./plan-doubt.ts";
import { planExtremes } from "./plan-extremes.ts";
import { planLoad } from "./plan-load.ts";
import { planPowerUp } from "./plan-power-up.ts";
import { planSettings } from "./plan-setting.ts";
import { planSummed } from "./plan-summed.ts";
import type { Report } from "./report.ts";
import { readState } from "./state-names.ts";

/**
 * Step 8: everything to enter on one channel. Undefined where the channel cannot even rest or fail safe; what is out of reach is
 * reported and left out.
 */
export function planChannel(
  output: Output,
  wishes: readonly EnteredWish[],
  complete: boolean,
  model: Model,
  controls: Controls,
  report: Report,
): PlanChannel | undefined {
  const { radio } = model;
  const rest = restState(controls);
  const at = ["surfaces", output.motion.name];
  const neutral = enterState(output, rest, "every control at rest", at, model, controls, report);
  const failsafe =
    model.failsafe === undefined
      ? neutral
      : enterState(
          output,
          readState(controls, rest, model.failsafe),
          "failsafe",
          ["failsafe"],
          model,
          controls,
          report,
        );
  if (neutral === undefined || failsafe === undefined) return undefined;
  const load = planLoad(output, wishes, model, controls, report);
  const doubt = planDoubt(output, wishes);
  const summed = planSummed(output, wishes, controls, report);
  const powerUp = planPowerUp(output, radio, sumMoves(output.motion.moves, controls, rest), report);
  const rigs = output.members.map(({ rig }) => rig);
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
    neutral: percentPulse(neutral),
    settings: wishes.flatMap((wish) => planSettings(output, wish, neutral, model, controls)),
    ...(summed === undefined ? {} : { summed }),
    extremes: planExtremes(output, radio, controls, complete, report),
    ...(doubt === undefined ? {} : { doubt }),
    ...(load === undefined ? {} : { load }),
    ...(powerUp === undefined ? {} : { powerUp }),
    failsafe: percentPulse(failsafe),
  };
}

function enterState(
  output: Output,
  state: State,
  what: string,
  at: readonly (string | number)[],
  { radio }: Model,
  controls: Controls,
  report: Report,
): Entry | undefined {
  const place = sumMoves(output.motion.moves, controls, state);
  const exactUs = reachPlace(output, place, `${output.motion.name}: ${what}`, at, radio, report);
  return exactUs === undefined ? undefined : output.grid.nearest(exactUs, output.openUs);
}

function percentPulse({ percent, pulseUs }: Entry): PercentPulse {
  return { percent, pulseUs };
}
