import { toPercent, toPulse } from "../signal/percent.ts";
import { shareToPulse } from "../signal/share.ts";
import { pct, us } from "../units/quantity.ts";
import type { Device, OutputMemory, Transmitter } from "./transmitter.ts";

/** Percent in, percent out: the output's curve, straight between its points and level outside them. */
export function bend({ curve }: OutputMemory, percent: number): number {
  const last = curve?.at(-1);
  if (curve === undefined || last === undefined) return percent;
  const above = curve.findIndex(({ inputPercent }) => inputPercent >= percent);
  const right = curve[above] ?? last;
  const left = curve[above - 1];
  if (left === undefined) return right.percent;
  const share = (percent - left.inputPercent) / (right.inputPercent - left.inputPercent);
  return left.percent * (1 - share) + right.percent * share;
}

/** Percent after the curve in, pulse at the receiver out: shift, limits and direction. Monotone in the percent. */
export function sendPulse({ scale, endPoints }: Transmitter, memory: OutputMemory, percent: number): number {
  const { shiftPercent, reversed } = memory;
  const pulse = (value: number): number => toPulse(scale, pct(value));
  const sentUs =
    endPoints === "scale"
      ? shareToPulse(
          [pulse(memory.lowPercent + shiftPercent), pulse(memory.highPercent + shiftPercent)],
          percent,
        )
      : endPoints === "clamp"
        ? pulse(clamp(percent + shiftPercent, memory))
        : pulse(clamp(percent, memory) + shiftPercent);
  return reversed ? pulse(-toPercent(scale, us(sentUs))) : sentUs;
}

/** What a failsafe value stores: the pulse of the percent, or of the share between the limits as they are now. */
export function storedUs({ scale, endPoints }: Transmitter, memory: OutputMemory, percent: number): number {
  const pulse = (value: number): number => toPulse(scale, pct(value));
  return endPoints === "scale"
    ? shareToPulse([pulse(memory.lowPercent), pulse(memory.highPercent)], percent)
    : pulse(percent);
}

/** The pulse after one device that adds `addedUs`, held to what the device can add. */
export function passDevice(pulseUs: number, device: Device, addedUs: number): number {
  return device.kind === "adds" ? pulseUs + within(addedUs, device.spanUs) : within(pulseUs, device.pulseUs);
}

function clamp(percent: number, { lowPercent, highPercent }: OutputMemory): number {
  return within(percent, [lowPercent, highPercent]);
}

function within(value: number, [low, high]: readonly [number, number]): number {
  return Math.min(Math.max(value, low), high);
}
