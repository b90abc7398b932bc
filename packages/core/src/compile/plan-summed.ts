import type { Summed } from "../plan/setup-plan.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { type Controls, positions, restState, type State, sumMoves } from "./motion.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import { nameState } from "./state-names.ts";

/** Combinations beyond this are not gone through one by one; then every two controls are, the others at rest. */
const most = 4096;
/** A difference below this is not worth a finding. (assumption of experience) */
const worthFindingDeg = 1;

/**
 * Step 9: what a transmitter gives that adds percents, where the moves should add in degrees, at the combination where it is furthest off.
 * Absent where only one control moves the channel, or the bench knows no degrees.
 */
export function planSummed(
  output: Output,
  entered: readonly EnteredWish[],
  controls: Controls,
  report: Report,
): Summed | undefined {
  const { motion, travel, grid } = output;
  const moving = new Set(
    motion.moves.flatMap(({ control, per }) => (per === undefined ? [control] : [control, per])),
  );
  if (motion.moves.length < 2 || travel.unit !== "deg") return undefined;
  const rest = restState(controls);
  const restUs = travel.pulseAt(sumMoves(motion.moves, controls, rest));
  if (restUs === undefined || entered.length === 0) return undefined;
  const spanUs = (control: string, position: number, per: State): number => {
    const alone = new Map(per).set(control, position);
    const withoutUs = travel.pulseAt(sumMoves(motion.moves, controls, per));
    const withUs = travel.pulseAt(sumMoves(motion.moves, controls, alone));
    return withUs === undefined || withoutUs === undefined ? 0 : withUs - withoutUs;
  };
  let worst: Summed | undefined;
  for (const state of combinations([...moving], controls, rest)) {
    const wantedDeg = sumMoves(motion.moves, controls, state);
    if (wantedDeg < output.openPlaces[0] || wantedDeg > output.openPlaces[1]) continue;
    let pulseUs = restUs;
    for (const { control, per } of motion.moves) {
      const base = per === undefined ? rest : new Map(rest).set(per, state.get(per) ?? 0);
      pulseUs += spanUs(control, state.get(control) ?? 0, base);
    }
    const sentUs = Math.min(grid.limits.high.pulseUs, Math.max(grid.limits.low.pulseUs, pulseUs));
    const givesDeg = travel.placeAt(sentUs);
    if (givesDeg === undefined) continue;
    const errorDeg = givesDeg - wantedDeg;
    if (worst === undefined || Math.abs(errorDeg) > Math.abs(worst.errorDeg))
      worst = { wantedDeg, givesDeg, errorDeg, pulseUs: sentUs, when: nameState(controls, state) };
  }
  if (worst !== undefined && Math.abs(worst.errorDeg) > worthFindingDeg)
    report("percents-summed", ["surfaces", motion.name], {
      surface: motion.name,
      combination: Object.entries(worst.when)
        .map(([name, position]) => `${name} ${position}`)
        .join(", "),
      wantedDeg: worst.wantedDeg,
      givesDeg: worst.givesDeg,
      errorDeg: Math.abs(worst.errorDeg),
    });
  return worst;
}

function combinations(moving: readonly string[], controls: Controls, rest: State): State[] {
  const choices = moving.map((name) => ({ name, list: positions(controls.get(name)) }));
  const count = choices.reduce((product, { list }) => product * list.length, 1);
  if (count <= most) return spread(choices, rest);
  return choices.flatMap((one, index) =>
    choices.slice(index + 1).flatMap((other) => spread([one, other], rest)),
  );
}

function spread(
  choices: readonly { readonly name: string; readonly list: readonly number[] }[],
  rest: State,
): State[] {
  return choices.reduce<State[]>(
    (states, { name, list }) =>
      states.flatMap((state) => list.map((position) => new Map(state).set(name, position))),
    [new Map(choices.map(({ name }) => [name, rest.get(name) ?? 0]))],
  );
}
