import type { Model } from "../model/model.ts";
import { servoDrift } from "../surface/thermal-shift.ts";
import { heatAt, kelvinFromBench } from "./heat.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";
import type { Rig } from "./rig-servos.ts";

/** An analogue servo wants at least so long from pulse to pulse. (assumption of experience) */
const leastFrameMs = 15;
/** An angle meter shows no less than this. (assumption of experience) */
const worthMentionDeg = 0.1;

/** What a servo itself does not like: pulses beyond its own, short frames, heat and cold that its guard does not cover. */
export function checkServos(outputs: readonly Output[], model: Model, report: Report): void {
  for (const { members } of outputs)
    for (const { rig } of members) {
      checkAccepted(rig, report);
      checkFrame(rig, model, report);
      checkTemperatures(rig, model, report);
    }
}

function checkAccepted({ named, bench }: Rig, report: Report): void {
  const accepts = named.servo.type?.accepts;
  const [lowUs, highUs] = bench.stopsUs;
  if (accepts === undefined || accepts[0] >= accepts[1] || (lowUs >= accepts[0] && highUs <= accepts[1]))
    return;
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

function checkTemperatures(rig: Rig, model: Model, report: Report): void {
  const { named, bench } = rig;
  // The stop down is always measured, and a measured stop up has the same guard.
  const guardUs = bench.guardUs[bench.rising ? 1 : 0];
  const heat = heatAt(rig, bench.levelUs, model);
  const kelvin = model.temperatures && kelvinFromBench(rig, model.temperatures);
  if (kelvin === undefined) return;
  const shiftUs = servoDrift(kelvin);
  if (shiftUs > guardUs)
    report("thermal-shift", [...named.address, "bench", "guard"], {
      servo: named.id,
      kelvin,
      shiftUs,
      ...(heat === undefined ? {} : { shiftDeg: heat.servoDeg }),
      guardUs,
    });
  if (heat?.rod === undefined || heat.rod.deflectionDeg < worthMentionDeg) return;
  report("rod-grows", [...named.address, "rod", "along"], {
    servo: named.id,
    kelvin,
    growthMm: heat.rod.growthMm,
    rodDeg: heat.rod.deflectionDeg,
    shiftDeg: heat.shiftDeg,
  });
}
