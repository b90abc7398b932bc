import type { Bench, Instruments, Radio, ServoType, Stop } from "../model/model.ts";
import { guardSpanUs } from "../uncertainty/guard.ts";
import { settingDoubt } from "./doubts.ts";
import type { Report } from "./report.ts";
import type { NamedServo } from "./resolve-names.ts";
import { largestStepUs } from "./step-span.ts";

/** One servo's stops and what lies safely inside them. */
export interface ResolvedBench {
  readonly upUs: number;
  readonly levelUs: number;
  readonly downUs: number;
  /** Whether deflection grows with pulse. */
  readonly rising: boolean;
  /** Lowest and highest pulse that may be emitted. */
  readonly safeUs: readonly [number, number];
  /** Guard inside the lowest and the highest pulse. */
  readonly guardUs: readonly [number, number];
  /** The raw stops, lowest and highest pulse. */
  readonly stopsUs: readonly [number, number];
}

const thickGuardUs = 30;
/** A rise of the holding current by more than this is first contact. (assumption of experience) */
const pushingAmps = 0.06;

/** Stops in order, guard inside; undefined and reported where the bench contradicts itself. */
export function resolveBench(
  { id, servo, address }: NamedServo,
  radio: Radio,
  instruments: Instruments | undefined,
  report: Report,
): ResolvedBench | undefined {
  const { bench } = servo;
  const at = [...address, "bench"];
  const levelUs: number = bench.level;
  const downUs = stopPulse(bench.down);
  const upUs = bench.up === undefined ? levelUs : stopPulse(bench.up);
  if (downUs === levelUs) {
    report("stops-equal", [...at, "down"], { levelUs });
    return undefined;
  }
  checkPushed(bench, at, report);
  const rising = downUs > levelUs;
  if (rising ? upUs > levelUs : upUs < levelUs) {
    report("stops-reversed", at, { upUs, levelUs, downUs });
    return undefined;
  }
  const neededUs = neededGuard(radio, instruments, servo.type);
  const guard = statedGuard(bench, neededUs, at, report);
  const addedUs = servo.added ?? 0;
  // A stop left out is level itself, which must stay reachable: nothing was measured there to keep clear of.
  const [upGuard, upAddedUs] = bench.up === undefined ? [0, 0] : [guard, addedUs];
  if (bench.up === undefined && addedUs > 0)
    report("added-past-level", [...address, "added"], { servo: id, addedUs, levelUs });
  const inSense = (up: number, down: number): [number, number] => (rising ? [up, down] : [down, up]);
  const guardUs = inSense(upGuard, guard);
  const addsUs = inSense(upAddedUs, addedUs);
  const stopsUs = inSense(upUs, downUs);
  const safeUs: [number, number] = [stopsUs[0] + guardUs[0] + addsUs[0], stopsUs[1] - guardUs[1] - addsUs[1]];
  if (safeUs[0] >= safeUs[1]) {
    report("guard-too-wide", [...at, "guard"], {
      guardUs: guard + addedUs,
      lowUs: stopsUs[0],
      highUs: stopsUs[1],
    });
    return undefined;
  }
  return { upUs, levelUs, downUs, rising, safeUs, guardUs, stopsUs };
}

/** A stop that was read while the servo already pushed. */
function checkPushed(bench: Bench, at: readonly (string | number)[], report: Report): void {
  for (const name of ["up", "down"] as const) {
    const stop = bench[name];
    if (typeof stop !== "object" || stop.current === undefined || bench.freeCurrent === undefined) continue;
    if (stop.current - bench.freeCurrent > pushingAmps)
      report("stop-pushed", [...at, name], {
        stop: name,
        stopAmps: stop.current,
        freeAmps: bench.freeCurrent,
      });
  }
}

function stopPulse(stop: Stop): number {
  return typeof stop === "number" ? stop : stop.pulse;
}

function statedGuard(
  bench: Bench,
  neededUs: number,
  at: readonly (string | number)[],
  report: Report,
): number {
  if (bench.guard === undefined) return neededUs;
  const guardUs: number = bench.guard;
  if (guardUs < neededUs) report("guard-thin", [...at, "guard"], { guardUs, neededUs });
  if (guardUs > thickGuardUs) report("guard-thick", [...at, "guard"], { guardUs });
  return guardUs;
}

/**
 * Twice the combined standard doubt of reading the stop, which is the tester's, and of setting a pulse: step, jitter and dead band;
 * never less than one step of the radio. No doubt of finding the contact itself is stated in a model.
 */
function neededGuard(
  radio: Radio,
  instruments: Instruments | undefined,
  type: ServoType | undefined,
): number {
  return guardSpanUs({
    pulseUs: settingDoubt(radio, instruments, type).standard,
    stepUs: largestStepUs(radio),
  });
}
