import type { Radio } from "../model/model.ts";
import type { PlanChannel } from "../plan/setup-plan.ts";
import { toPercent } from "../signal/percent.ts";
import { us } from "../units/quantity.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/** Where the receiver sends a channel before it hears the transmitter; undefined where the model does not say. */
export function planPowerUp(
  output: Output,
  radio: Radio,
  restPlace: number,
  report: Report,
): PlanChannel["powerUp"] {
  const { powerUp } = radio;
  if (powerUp === undefined) return undefined;
  const { safeUs, travel, members } = output;
  const [{ rig, motion }] = members;
  const givesDeg = travel.unit === "deg" ? travel.placeAt(powerUp) : undefined;
  if (powerUp < safeUs[0] || powerUp > safeUs[1])
    report("power-up-unsafe", rig.named.address, {
      servo: rig.named.id,
      powerUpUs: powerUp,
      lowUs: safeUs[0],
      highUs: safeUs[1],
    });
  else if (givesDeg !== undefined && Math.abs(givesDeg - restPlace) > worthWarningDeg)
    report("power-up-moves", rig.named.address, { surface: motion.name, powerUpUs: powerUp, givesDeg });
  return {
    pulseUs: powerUp,
    percent: toPercent(radio, us(powerUp)),
    ...(givesDeg === undefined ? {} : { deflectionDeg: givesDeg }),
  };
}

/** A surface that moves less than this at power-up startles nobody. (assumption of experience) */
const worthWarningDeg = 2;
