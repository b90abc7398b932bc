import { bend, passDevice, sendPulse } from "./shape-pulse.ts";
import {
  type ControlContribution,
  type ControlPositions,
  contributionsByControl,
  countingContributions,
  furthestPosition,
  type OutputMemory,
  restPosition,
  stickShare,
  type Transmitter,
} from "./transmitter.ts";

/**
 * The pulse of every output, microseconds, with the controls there and all transits over. A stick is held to its travel and
 * trim. `addedUs` is what each device of a chain that may add a span adds now, in the order of the chain; 0 where not named.
 */
export function outputs(
  transmitter: Transmitter,
  positions: ControlPositions,
  addedUs: readonly number[] = [],
): Readonly<Record<number, number>> {
  return Object.fromEntries(
    Object.entries(transmitter.outputs).map(([output, memory]) => [
      output,
      pulseAt(transmitter, memory, positions, addedUs),
    ]),
  );
}

/** What `outputs` gives for an output for which this is set. */
export function pulseAt(
  transmitter: Transmitter,
  memory: OutputMemory,
  positions: ControlPositions,
  addedUs: readonly number[] = [],
): number {
  const shares = [...contributionsByControl(memory)].map(([control, own]) =>
    shareOf(transmitter, control, own, positions),
  );
  return pulseOf(transmitter, memory, shares, addedUs);
}

/**
 * The pulse of one output, `seconds` after its controls went from one place to another: a control with a transit is on its way in
 * a straight line, all others are there. Less than 0 counts as 0. Undefined for an output that the memory has not.
 */
export function outputOverTime(
  transmitter: Transmitter,
  output: number,
  from: ControlPositions,
  to: ControlPositions,
  seconds: number,
): number | undefined {
  const memory = transmitter.outputs[output];
  if (memory === undefined) return undefined;
  const elapsed = Math.max(0, seconds);
  const shares = [...contributionsByControl(memory)].map(([control, own]) => {
    const last = shareOf(transmitter, control, own, to);
    const transit = Object.hasOwn(memory.transits, control) ? (memory.transits[control] ?? 0) : 0;
    if (elapsed >= transit) return last;
    const done = elapsed / transit;
    return shareOf(transmitter, control, own, from) * (1 - done) + last * done;
  });
  return pulseOf(transmitter, memory, shares, []);
}

/** What one control adds to the sum, percent. */
function shareOf(
  transmitter: Transmitter,
  control: string,
  own: readonly ControlContribution[],
  positions: ControlPositions,
): number {
  const counting = countingContributions(own, (selector, detent) => positions[selector] === detent);
  const valueAt = (where: string | number) => counting.find((one) => one.position === where)?.percent ?? 0;
  const position = positions[control] ?? restPosition(transmitter, control);
  if (typeof position === "string") return valueAt(position);
  const furthest = furthestPosition(transmitter, control);
  const held = Math.min(furthest, Math.max(-furthest, position));
  return stickShare(transmitter, control, [valueAt(-1), valueAt(1)], held);
}

function pulseOf(
  transmitter: Transmitter,
  memory: OutputMemory,
  shares: readonly number[],
  addedUs: readonly number[],
): number {
  const sum = shares.reduce((total, share) => total + share, memory.restPercent);
  return memory.chain.reduce(
    (pulseUs, device, index) => passDevice(pulseUs, device, addedUs[index] ?? 0),
    sendPulse(transmitter, memory, bend(memory, sum)),
  );
}
