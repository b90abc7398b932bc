import type { Model } from "../model/model.ts";
import { servoDrift } from "../surface/thermal-shift.ts";
import { us } from "../units/quantity.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";

/** An analogue servo wants at least so long from pulse to pulse. (assumption of experience) */
const leastFrameMs = 15;
/** Temperature of a bench that states none. (assumption of experience) */
const usualCelsius = 20;

/** What a servo itself does not like: pulses beyond its own, short frames, heat and cold that its guard does not cover. */
export function checkServos(outputs: readonly Output[], model: Model, report: Report): void {
  for (const { members, guardUs } of outputs)
    for (const { rig } of members) {
      checkAccepted(rig, report);
      checkFrame(rig, model, report);
      checkTemperatures(rig, Math.min(...guardUs), model, report);
    }
}

function checkAccepted({ named, bench }: Rig, report: Report): void {
  const accepts = named.servo.type?.accepts;
  const [lowUs, highUs] = bench.stopsUs;
  if (accepts === undefined || (lowUs >= accepts[0] && highUs <= accepts[1])) return;
  report("servo-pulse", [...named.address, "bench"], {
    servo: named.id,
    lowUs,
    highUs,
    shortestUs: accepts[0],
    longestUs: accepts[1],
  });
}

function checkFrame({ named }: Rig, { radio }: Model, report: Report): void {
  if (radio.frame === undefined || named.servo.type?.analogue !== true) return;
  const frameMs = radio.frame * 1000;
  if (frameMs < leastFrameMs)
    report("frame-short", [...named.address, "type"], { servo: named.id, frameMs, leastMs: leastFrameMs });
}

function checkTemperatures(
  { named, bench, response }: Rig,
  guardUs: number,
  { temperatures }: Model,
  report: Report,
): void {
  if (temperatures === undefined) return;
  const measured = named.servo.bench.measured?.temperature ?? usualCelsius;
  const kelvin = Math.max(...temperatures.map((celsius) => Math.abs(celsius - measured)));
  const shiftUs = servoDrift(kelvin);
  const slope = response?.slopeAt(us(bench.levelUs)) ?? 0;
  if (shiftUs > guardUs)
    report("thermal-shift", [...named.address, "bench", "guard"], {
      servo: named.id,
      kelvin,
      shiftUs,
      shiftDeg: Math.abs(shiftUs * slope),
      guardUs,
    });
}
