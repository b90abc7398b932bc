import type { Radio } from "../model/model.ts";
import type { Setting } from "../plan/setup-plan.ts";
import { typedPercent } from "../plan/typed-percent.ts";
import { toPercent } from "../signal/percent.ts";
import { throwAt } from "../surface/throw.ts";
import { expand } from "../uncertainty/expand.ts";
import { roundToStep } from "../units/decimals.ts";
import { deg, us } from "../units/quantity.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { entryAt } from "./entry-at.ts";
import type { Entry } from "./entry-grid.ts";
import { extensionAtDeflection } from "./extension.ts";
import type { Member, Motion, Output } from "./output.ts";
import type { MemberLoad } from "./plan-load.ts";
import { standardAt } from "./position-doubt.ts";
import type { Rig } from "./rig-servos.ts";
import { trailingEdge } from "./trailing-edge.ts";

/** A wish as lines of the plan: one for each surface that the channel drives. */
export function planSettings(
  output: Output,
  entered: EnteredWish,
  wishes: readonly EnteredWish[],
  loads: readonly MemberLoad[],
  radio: Radio,
): Setting[] {
  const surfaces = new Map(output.members.map((member) => [member.motion.name, member]));
  return [...surfaces.values()].map((member) => {
    const setting = planSetting(output, member, entered, wishes, radio);
    const found = loads.find((one) => one.member === member && one.entered === entered);
    return found === undefined ? setting : { ...setting, load: found.load };
  });
}

/** What is wanted, the exact pulse, the values for every way a transmitter may ask, and what they give. */
function planSetting(
  output: Output,
  { motion, rig }: Member,
  entered: EnteredWish,
  wishes: readonly EnteredWish[],
  radio: Radio,
): Setting {
  const { openPlaces } = output;
  const { travel } = rig;
  const { wish, exactUs, entry } = entered;
  const byDegrees = travel.unit === "deg";
  const base = entryAt(output, wish.restPlace, wishes) ?? restOf(wishes) ?? entry;
  const { place, control, detent, stick, when } = wish;
  const given = travel.placeAt(entry.pulseUs);
  return {
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    ...(when === undefined ? {} : { when }),
    surface: motion.name,
    ...(byDegrees ? { wanted: wanted(motion, rig, place) } : {}),
    exact: { pulseUs: exactUs, percent: toPercent(radio, us(exactUs)) },
    enter: {
      percent: entry.percent,
      pulseUs: entry.pulseUs,
      addPercent: roundToStep(typedPercent(entry, radio) - typedPercent(base, radio), radio.step),
      sharePercent: entry.sharePercent,
      ...(byDegrees ? { commandPercent: roundToStep(commandPercent(place, openPlaces), radio.step) } : {}),
    },
    ...(byDegrees && given !== undefined ? { gives: gives(rig, entry.pulseUs, given, place) } : {}),
  };
}

function gives(rig: Rig, pulseUs: number, deflectionDeg: number, wantedDeg: number) {
  const standard = standardAt(rig, pulseUs);
  const errorDeg = deflectionDeg - wantedDeg;
  return standard === undefined
    ? { deflectionDeg, errorDeg }
    : { deflectionDeg, errorDeg, uncertaintyDeg: expand(standard) };
}

function wanted({ surface }: Motion, { linked }: Rig, deflectionDeg: number) {
  const extensionMm =
    linked === undefined
      ? undefined
      : extensionAtDeflection(linked.drive, deflectionDeg - linked.line.deflectionZeroDeg);
  const extension = extensionMm === undefined ? {} : { extensionMm };
  if (surface.chord === undefined || Math.abs(deflectionDeg) > 90) return { deflectionDeg, ...extension };
  return {
    deflectionDeg,
    ...extension,
    throwMm: throwAt(trailingEdge(surface, surface.chord), deg(deflectionDeg)),
  };
}

function restOf(wishes: readonly EnteredWish[]): Entry | undefined {
  return wishes.find(({ wish }) => wish.together === "rest")?.entry;
}

function commandPercent(place: number, [lowest, highest]: readonly [number, number]): number {
  return ((place - lowest) / (highest - lowest)) * 200 - 100;
}
