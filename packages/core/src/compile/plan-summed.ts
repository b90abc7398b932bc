import type { Summed } from "../plan/setup-plan.ts";
import { type Controls, type Move, positions, restState, type State, sumMoves } from "./motion.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import { nameState } from "./state-names.ts";

/** Combinations beyond this are not gone through one by one; then every two controls are, the others at rest. */
const most = 1024;
/** A difference below this is not worth a finding. (assumption of experience) */
const worthFindingDeg = 1;

/**
 * What a transmitter gives that adds percents, where the moves should add in degrees, at the combination where it is furthest off.
 * Absent where only one control moves the channel, or the bench knows no degrees.
 */
export function planSummed(output: Output, controls: Controls, report: Report): Summed | undefined {
  const { motion, travel, grid, openPlaces } = output;
  if (motion.moves.length < 2 || travel.unit !== "deg") return undefined;
  const rest = restState(controls);
  const restUs = travel.pulseAt(sumMoves(motion.moves, controls, rest));
  if (restUs === undefined) return undefined;
  const spans = motion.moves.map((move) => spanOf(move, output, controls, rest));
  let worst: Omit<Summed, "when"> | undefined;
  let worstState: State = rest;
  for (const state of combinations(motion.moves, controls, rest)) {
    const wantedDeg = sumMoves(motion.moves, controls, state);
    if (wantedDeg < openPlaces[0] || wantedDeg > openPlaces[1]) continue;
    const pulseUs = spans.reduce((sum, spanUs) => sum + spanUs(state), restUs);
    const sentUs = Math.min(grid.limits.high.pulseUs, Math.max(grid.limits.low.pulseUs, pulseUs));
    const givesDeg = travel.placeAt(sentUs);
    if (givesDeg === undefined || Math.abs(givesDeg - wantedDeg) <= Math.abs(worst?.errorDeg ?? 0)) continue;
    worst = { wantedDeg, givesDeg, errorDeg: givesDeg - wantedDeg, pulseUs: sentUs };
    worstState = state;
  }
  if (worst === undefined) return undefined;
  const when = nameState(controls, worstState);
  if (Math.abs(worst.errorDeg) > worthFindingDeg)
    report("percents-summed", ["surfaces", motion.name], {
      surface: motion.name,
      combination: Object.entries(when)
        .map(([name, position]) => `${name} ${position}`)
        .join(", "),
      wantedDeg: worst.wantedDeg,
      givesDeg: worst.givesDeg,
      errorDeg: Math.abs(worst.errorDeg),
    });
  return { ...worst, when };
}

/** State -> the pulse span that a control adds when it alone moves; each of its few values is worked out once. */
function spanOf(
  { control, per }: Move,
  { motion, travel }: Output,
  controls: Controls,
  rest: State,
): (state: State) => number {
  const known = new Map<number, number>();
  const own = positions(controls.get(control));
  return (state) => {
    const position = state.get(control) ?? 0;
    const perPosition = per === undefined ? 0 : (state.get(per) ?? 0);
    const key = perPosition * own.length + own.indexOf(position);
    const found = known.get(key);
    if (found !== undefined) return found;
    const base = per === undefined ? rest : new Map(rest).set(per, perPosition);
    const fromUs = travel.pulseAt(sumMoves(motion.moves, controls, base));
    const toUs = travel.pulseAt(sumMoves(motion.moves, controls, new Map(base).set(control, position)));
    const spanUs = fromUs === undefined || toUs === undefined ? 0 : toUs - fromUs;
    known.set(key, spanUs);
    return spanUs;
  };
}

function combinations(moves: readonly Move[], controls: Controls, rest: State): State[] {
  const names = new Set(
    moves.flatMap(({ control, per }) => (per === undefined ? [control] : [control, per])),
  );
  const choices = [...names].map((name) => ({ name, list: positions(controls.get(name)) }));
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
