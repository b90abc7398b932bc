import type { Address } from "../address/address.ts";
import type { Radio } from "../model/model.ts";
import { toPulse } from "../signal/percent.ts";
import { pct } from "../units/quantity.ts";
import { allowedOf } from "./allowed-of.ts";
import type { Entry } from "./entry-grid.ts";
import { describeWish, type Wish, wishAddress } from "./list-wishes.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import { largestStepUs } from "./step-span.ts";

/** A wish on one channel: the exact pulse, and the values that may be entered for it. */
export interface ExactWish {
  readonly wish: Wish;
  readonly exactUs: number;
  readonly nearest: Entry;
  readonly around: readonly Entry[];
}

/** A wish and the value chosen for it. */
export interface EnteredWish extends ExactWish {
  readonly entry: Entry;
}

// A place computed as the safe end itself may miss it by a rounding error of the last digits.
const toleranceUs = 1e-9;

/** The exact pulse of a wish and its neighbours on the grid; undefined and reported where it is out of reach. */
export function enterWish(output: Output, wish: Wish, radio: Radio, report: Report): ExactWish | undefined {
  const what = `${output.motion.name}: ${describeWish(wish)}`;
  const exactUs = reachPlace(output, wish.place, what, wishAddress(wish, output.motion.name), radio, report);
  if (exactUs === undefined) return undefined;
  const nearest = output.grid.nearest(exactUs, output.openUs);
  if (nearest === undefined) {
    const [lowUs, highUs] = output.openUs;
    report("step-too-coarse", wishAddress(wish, output.motion.name), {
      what,
      exactUs,
      lowUs,
      highUs,
      stepUs: largestStepUs(radio),
    });
    return undefined;
  }
  return { wish, exactUs, nearest, around: output.grid.around(exactUs, output.openUs) };
}

/** The pulse of a place, if the model allows it, the readings cover it, the stops permit it and the radio can send it. */
function reachPlace(
  output: Output,
  place: number,
  what: string,
  at: Address,
  radio: Radio,
  report: Report,
): number | undefined {
  const { travel, motion } = output;
  const allowed = allowedOf(motion.surface);
  if (travel.unit === "deg" && allowed !== undefined) {
    const [lowest, highest] = allowed;
    if (place < lowest || place > highest) {
      report("not-allowed", at, { what, wantedDeg: place, allowedDeg: place < lowest ? lowest : highest });
      return undefined;
    }
  }
  const pulseUs = travel.pulseAt(place);
  if (pulseUs === undefined) {
    reportNotMeasured(output, place, what, at, report);
    return undefined;
  }
  const below = pulseUs < output.safeUs[0] - toleranceUs;
  if (below || pulseUs > output.safeUs[1] + toleranceUs) {
    reportLimitPassed(output, pulseUs, what, at, report);
    return undefined;
  }
  const reachPercent: number = radio.reach;
  const reachesUs = [toPulse(radio, pct(-reachPercent)), toPulse(radio, pct(reachPercent))] as const;
  if (pulseUs < reachesUs[0] || pulseUs > reachesUs[1]) {
    const low = pulseUs < reachesUs[0];
    report("signal-range", at, {
      what,
      pulseUs,
      reachUs: reachesUs[low ? 0 : 1],
      reachPercent: low ? -reachPercent : reachPercent,
    });
    return undefined;
  }
  return Math.min(Math.max(pulseUs, output.safeUs[0]), output.safeUs[1]);
}

function reportNotMeasured(output: Output, place: number, what: string, at: Address, report: Report): void {
  const { travel } = output;
  const high = place > travel.places[1];
  if (travel.unit === "us") {
    const rising = travel.rising ? 1 : -1;
    reportLimitPassed(output, output.members[0].rig.bench.levelUs + rising * place, what, at, report);
    return;
  }
  const end = high === travel.rising ? 1 : 0;
  const measuredUs = travel.pulsesUs[end];
  report("not-measured", at, {
    what,
    wantedDeg: place,
    measuredDeg: travel.places[high ? 1 : 0],
    measuredUs,
    servo: output.members[0].rig.named.id,
    reachDeg: reachDeg(output, high),
    bound: high ? "at most" : "at least",
    end: (end === 1 ? measuredUs >= output.safeUs[1] : measuredUs <= output.safeUs[0]) ? "stop" : "reading",
  });
}

function reportLimitPassed(output: Output, pulseUs: number, what: string, at: Address, report: Report): void {
  const end = pulseUs < output.safeUs[0] ? 0 : 1;
  const isDown = (end === 1) === output.travel.rising;
  report("limit-passed", at, {
    what,
    pulseUs,
    limitUs: output.safeUs[end],
    stopUs: output.stopsUs[end],
    guardUs: output.guardUs[end],
    stop: isDown ? "down" : "up",
    reach:
      output.travel.unit === "deg"
        ? `${reachDeg(output, isDown).toFixed(1)} deg is the furthest that is safe.`
        : "",
  });
}

/** The furthest tenth of a degree that can be asked for: a finding must not name what it would then refuse. */
function reachDeg({ travel, openUs, openPlaces }: Output, isDown: boolean): number {
  const nearest = Math.round(openPlaces[isDown ? 1 : 0] * 10);
  const pulseUs = travel.pulseAt(nearest / 10);
  const isOpen =
    pulseUs !== undefined && pulseUs >= openUs[0] - toleranceUs && pulseUs <= openUs[1] + toleranceUs;
  // Added to 0, a level end is never written as minus 0.
  return (isOpen ? nearest : nearest + (isDown ? -1 : 1)) / 10 + 0;
}
