import type { Instruments, Radio, Surface } from "../model/model.ts";
import type { Response } from "../response/response.ts";
import { readResponse } from "./read-response.ts";
import type { Report } from "./report.ts";
import { type ResolvedBench, resolveBench } from "./resolve-bench.ts";
import type { NamedServo, NamedSurface } from "./resolve-names.ts";
import { type Travel, travelByPulse, travelByResponse } from "./travel.ts";

/** A servo, what its bench allows and how its pulse moves its surface. */
export interface Rig {
  readonly named: NamedServo;
  readonly bench: ResolvedBench;
  readonly travel: Travel;
  /** Absent on a bench that knows no degrees. */
  readonly response?: Response;
}

/** Steps 2 and 3: bench and response of every servo of a surface; undefined where one of them contradicts itself. */
export function rigServos(
  { surface, servos }: NamedSurface,
  radio: Radio,
  instruments: Instruments | undefined,
  report: Report,
): readonly [Rig, ...Rig[]] | undefined {
  const rigs = servos.map((named) => rigServo(named, surface, radio, instruments, report));
  const [first, ...others] = rigs.filter((rig) => rig !== undefined);
  return first === undefined || others.length + 1 < servos.length ? undefined : [first, ...others];
}

function rigServo(
  named: NamedServo,
  surface: Surface,
  radio: Radio,
  instruments: Instruments | undefined,
  report: Report,
): Rig | undefined {
  const bench = resolveBench(named, radio, instruments, report);
  const read = readResponse(named, surface, bench, instruments, report);
  if (bench === undefined || read === "contradicts") return undefined;
  if (read === undefined) return { named, bench, travel: travelByPulse(bench) };
  return { named, bench, response: read, travel: travelByResponse(read) };
}
