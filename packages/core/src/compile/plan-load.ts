import type { Control, Model, Surface } from "../model/model.ts";
import type { Load, SettingLoad } from "../plan/setup-plan.ts";
import { airDensity, dynamicPressurePa, SEA_LEVEL_DENSITY } from "../surface/air.ts";
import {
  coefficientsPerDeg,
  flapCoefficients,
  type HingeCoefficients,
  hingeMoment,
} from "../surface/hinge-moment.ts";
import { rodForce } from "../surface/rod-force.ts";
import { limitSpeed, servoLoad } from "../surface/servo-load.ts";
import { servoStiffness, swingFrequencyHz } from "../surface/stiffness.ts";
import { deg, type Mps, mm, mps, nm } from "../units/quantity.ts";
import type { EnteredWish } from "./enter-wishes.ts";
import { leverageAt } from "./leverage.ts";
import { describeWish, type Wish, wishAddress } from "./list-wishes.ts";
import type { Controls } from "./motion.ts";
import type { Member, Output } from "./output.ts";
import type { Report } from "./report.ts";

/** Part of the section that a surface takes where the model does not say. (assumption of experience) */
const usualPart = 0.25;
/** From this share of the stall torque on a servo is taken not to hold, from the other on it is worth a warning. (assumption of experience) */
const notHeldShare = 0.8;
const warningShare = 0.5;

/** The load of one member of a channel at one setting. */
export interface MemberLoad {
  readonly member: Member;
  readonly entered: EnteredWish;
  readonly load: SettingLoad;
  /** What the servo holds at the supply in use. */
  readonly heldNm: number;
}

/** The load of every member at every setting for which airspeed, size, servo and leverage are known. */
export function listLoads(
  { members }: Output,
  wishes: readonly EnteredWish[],
  model: Model,
  controls: Controls,
): MemberLoad[] {
  return members.flatMap((member) =>
    wishes.flatMap((entered) => {
      const load = loadOf(member, entered, model, controls);
      return load === undefined ? [] : [{ member, entered, ...load }];
    }),
  );
}

function loadOf(
  { motion, rig }: Member,
  { wish, entry }: EnteredWish,
  model: Model,
  controls: Controls,
): Pick<MemberLoad, "load" | "heldNm"> | undefined {
  const { surface } = motion;
  const airspeed = airspeedOf(wish, model, controls.get(wish.control));
  const torque = rig.named.servo.type?.torque;
  const leverage = leverageAt(rig, entry.pulseUs);
  const deflection = rig.travel.placeAt(entry.pulseUs);
  const coefficients = coefficientsOf(surface);
  if (airspeed === undefined || torque === undefined || leverage === undefined || deflection === undefined)
    return undefined;
  if (surface.span === undefined || surface.chord === undefined || coefficients === undefined)
    return undefined;
  const density =
    model.field === undefined ? undefined : airDensity({ ...model.field, heightM: model.field.height });
  const momentNm =
    hingeMoment(
      { span: surface.span, chord: surface.chord },
      coefficients,
      dynamicPressurePa(airspeed, density ?? SEA_LEVEL_DENSITY),
      { incidence: surface.incidence ?? deg(0), deflection: deg(deflection) },
    ) /
    // Several servos of one surface are taken to share its moment.
    motion.rigs.length;
  const { ratedAt } = rig.named.servo.type ?? {};
  const servo = servoLoad(
    nm(momentNm),
    leverage.ratio,
    { torque, ...(ratedAt === undefined ? {} : { ratedAt }) },
    model.supply?.voltage,
  );
  if (servo === undefined) return undefined;
  const limit = limitSpeed(airspeed, servo.share);
  const rodN = leverage.rod === undefined ? undefined : rodForce(nm(momentNm), mm(leverage.rod.surfaceMm));
  const load = {
    airspeedMps: airspeed,
    momentNm,
    torqueNm: servo.needed,
    share: servo.share,
    ...(limit === undefined ? {} : { limitMps: limit }),
    ...(rodN === undefined ? {} : { rodN }),
  };
  return { load, heldNm: servo.held };
}

/** The setting of a channel that loads its servo most; servos that will not hold are reported. */
export function planLoad(
  output: Output,
  wishes: readonly EnteredWish[],
  loads: readonly MemberLoad[],
  report: Report,
): Load | undefined {
  for (const { member, entered, load } of loads) reportLoad(member, entered.wish, load, report);
  const worst = loads.reduce<MemberLoad | undefined>(
    (a, b) => (a === undefined || b.load.share > a.load.share ? b : a),
    undefined,
  );
  if (worst === undefined) return undefined;
  const { control, detent, stick, when } = worst.entered.wish;
  const swingHz = slowestSwing(output, wishes);
  return {
    worstNm: worst.load.torqueNm,
    heldNm: worst.heldNm,
    share: worst.load.share,
    when: { ...when, [control]: detent ?? stick ?? 0 },
    airspeedMps: worst.load.airspeedMps,
    ...(swingHz === undefined ? {} : { swingHz }),
  };
}

/** The lowest frequency at which a surface of the channel swings on its servo; undefined where inertia or servo are not known. */
function slowestSwing({ members }: Output, wishes: readonly EnteredWish[]): number | undefined {
  const frequencies = members.flatMap(({ motion, rig }) =>
    wishes.flatMap(({ entry }) => {
      const { inertia } = motion.surface;
      const torque = rig.named.servo.type?.torque;
      const leverage = leverageAt(rig, entry.pulseUs);
      if (inertia === undefined || torque === undefined || leverage === undefined) return [];
      return swingFrequencyHz(servoStiffness(torque) * motion.rigs.length, leverage.ratio, inertia) ?? [];
    }),
  );
  return frequencies.length === 0 ? undefined : Math.min(...frequencies);
}

function reportLoad({ motion, rig }: Member, wish: Wish, load: SettingLoad, report: Report): void {
  if (load.share <= warningShare || load.limitMps === undefined) return;
  report(load.share >= notHeldShare ? "not-held" : "load-high", wishAddress(wish, motion.name), {
    servo: rig.named.id,
    what: describeWish(wish),
    sharePercent: load.share * 100,
    airspeedMps: load.airspeedMps,
    limitMps: load.limitMps,
    momentNm: load.momentNm,
  });
}

/** The fastest at which a wish is used: its detent's or its stick's own speed, otherwise the model's. */
function airspeedOf(
  { control, detent, stick }: Wish,
  { airspeed }: Model,
  declared: Control | undefined,
): Mps | undefined {
  if (airspeed === undefined) return undefined;
  const own = Object.hasOwn(airspeed, control) ? airspeed[control] : undefined;
  const rests = declared?.kind === "stick" && declared.rests === stick;
  const speed =
    typeof own === "number" ? (rests ? undefined : own) : detent === undefined ? undefined : own?.[detent];
  return speed === undefined ? airspeed.otherwise : mps(speed);
}

function coefficientsOf(surface: Surface): HingeCoefficients | undefined {
  const { hingeMoment: own, section, chord } = surface;
  if (own !== undefined) return coefficientsPerDeg(own.byIncidence, own.byDeflection);
  return flapCoefficients(section === undefined || chord === undefined ? usualPart : chord / section);
}
