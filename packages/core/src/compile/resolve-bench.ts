import type { Bench, Instruments, Radio, Stop } from "../model/model.ts";
import type { Report } from "./report.ts";
import type { NamedServo } from "./resolve-names.ts";

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

/** Half-widths of doubt where a model states none: (assumption of experience) a tester that shows whole microseconds, an angle meter, a steel rule. */
export const usualInstruments = { pulseUs: 1, deflectionDeg: 0.2, throwMm: 0.5 } as const;

const thickGuardUs = 30;
/** A rise of the holding current by more than this is first contact. (assumption of experience) */
const pushingAmps = 0.06;

/** Step 2: stops in order, guard inside; undefined and reported where the bench contradicts itself. */
export function resolveBench(
  { servo, address }: NamedServo,
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
  const neededUs = neededGuard(radio, instruments, servo.type?.deadBand ?? 0);
  const guard = statedGuard(bench, neededUs, at, report);
  // A stop left out is level itself, which must stay reachable: nothing was measured there to keep clear of.
  const upGuard = bench.up === undefined ? 0 : guard;
  const addedUs = servo.added ?? 0;
  const guardUs: [number, number] = rising ? [upGuard, guard] : [guard, upGuard];
  const stopsUs: [number, number] = rising ? [upUs, downUs] : [downUs, upUs];
  const safeUs: [number, number] = [stopsUs[0] + guardUs[0] + addedUs, stopsUs[1] - guardUs[1] - addedUs];
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

export function stopPulse(stop: Stop): number {
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
 * Twice the combined standard doubt of reading the stop and of setting a pulse (tester, half a step of the radio, dead band,
 * each rectangular), and never less than one step of the radio.
 */
function neededGuard(radio: Radio, instruments: Instruments | undefined, deadBandUs: number): number {
  const stepUs = largestStepUs(radio);
  const halfWidths = [instruments?.pulse ?? usualInstruments.pulseUs, stepUs / 2, deadBandUs];
  const standardUs = Math.sqrt(halfWidths.reduce((sum, width) => sum + width ** 2 / 3, 0));
  return Math.max(2 * standardUs, stepUs);
}

/** Pulse span of one step of the radio, on its coarser side. */
export function largestStepUs(radio: Radio): number {
  const { per100 } = radio;
  return ((typeof per100 === "number" ? per100 : Math.max(per100.below, per100.above)) * radio.step) / 100;
}
