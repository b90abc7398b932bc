import type { Finding } from "../findings/finding.ts";
import type { Model } from "../model/model.ts";
import { hasErrors } from "../plan/has-errors.ts";
import type { PlanInTheMaking } from "../plan/setup-plan.ts";
import { assemblePlan } from "./assemble-plan.ts";
import { checkFacts } from "./check-facts.ts";
import { checkLimits } from "./check-limits.ts";
import { checkServos } from "./check-servo.ts";
import { checkSupply } from "./check-supply.ts";
import { chooseEntries } from "./choose-entries.ts";
import { compareServos } from "./compare-servos.ts";
import { compareSides } from "./compare-sides.ts";
import { enterWish } from "./enter-wishes.ts";
import { sidesOf } from "./legs.ts";
import { listWishes } from "./list-wishes.ts";
import { restState } from "./motion.ts";
import { type Motion, makeOutputs } from "./output.ts";
import { placeMoves } from "./place-moves.ts";
import { planChannel } from "./plan-channel.ts";
import { planCurve } from "./plan-curve.ts";
import { planTransits } from "./plan-transits.ts";
import { refuseUnsafeSums } from "./refuse-unsafe-sums.ts";
import { remark } from "./remark.ts";
import { remarkCurve } from "./remark-curve.ts";
import { remarkReserve } from "./remark-reserve.ts";
import { remarkSides } from "./remark-sides.ts";
import { reportTo } from "./report.ts";
import { resolveNames } from "./resolve-names.ts";
import { rigServos } from "./rig-servos.ts";
import { sortKeys } from "./sort-keys.ts";
import { readState } from "./state-names.ts";
import { yieldMoves } from "./yield-moves.ts";

/** A model's setup plan without the order in which to enter it; see `compile`. */
export function draftPlan(declared: Model): PlanInTheMaking {
  const model = sortKeys(declared);
  const findings: Finding[] = [];
  const report = reportTo(findings);
  // 1. Names and groups.
  const { surfaces, controls, moves } = resolveNames(model, report);
  checkFacts(surfaces, model.temperatures, report);
  // 2 to 4. Benches, responses, and every wanted place as a number.
  const motions = surfaces.flatMap((named): Motion[] => {
    const rigs = rigServos(named, model.radio, model.instruments, report);
    const placed = rigs && placeMoves(named.name, named.surface, rigs, moves.get(named.name) ?? [], report);
    return rigs && placed ? [{ name: named.name, surface: named.surface, rigs, moves: placed }] : [];
  });
  // 5. Who gives way.
  const yielded = yieldMoves(motions, model, controls, report);
  // 6. Channels and what can be entered on them.
  const outputs = makeOutputs(yielded, model.radio, report);
  const failsafe = readState(controls, restState(controls), model.failsafe ?? {});
  // 7. The exact pulse of every detent and stick end.
  const wishes = new Map(
    outputs.map((output) => [output, listWishes(output.motion.moves, controls, failsafe)]),
  );
  const exact = new Map(
    [...wishes].map(([output, list]) => [
      output,
      list.flatMap((wish) => enterWish(output, wish, model.radio, report) ?? []),
    ]),
  );
  // 8. The values to enter, left and right together.
  const entered = chooseEntries(exact, model.groups ?? {});
  const transits = planTransits(entered, model, controls, report);
  // 9. Settings, extremes and failsafe of each channel.
  const curves = new Map(outputs.map((output) => [output, planCurve(output, model.radio)]));
  const channels = outputs.flatMap((output) => {
    const complete = exact.get(output)?.length === wishes.get(output)?.length;
    const channel = planChannel(
      output,
      entered.get(output) ?? [],
      complete,
      curves.get(output),
      model,
      controls,
      report,
    );
    const timed = transits.get(output) ?? [];
    return channel === undefined || output.refused
      ? []
      : [timed.length === 0 ? channel : { ...channel, transits: timed }];
  });
  // 10. Left and right on the way between detents.
  const sides = [...entered].flatMap(([output, list]) => sidesOf(output, list));
  const matches = compareSides(sides, model, report);
  const gangs = compareServos(yielded, sides, report);
  // 11. What is worth knowing.
  remark(exact, model, report);
  // The search is long, and a plan with an error is entered with no curve at all.
  if (!hasErrors({ findings }))
    for (const [output, curve] of curves) remarkCurve(output, curve, model, report);
  remarkSides(yielded, wishes, exact, model, report);
  remarkReserve(yielded, controls, report);
  checkSupply(yielded, model, report);
  checkLimits(outputs, model.radio, report);
  checkServos(outputs, model, report);
  // 12. The document.
  const parts = { channels, matches, gangs };
  refuseUnsafeSums(assemblePlan(model, parts, []), outputs, report);
  return assemblePlan(model, parts, findings);
}
