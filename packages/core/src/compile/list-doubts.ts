import type { Model } from "../model/model.ts";
import type { DoubtCause, PlanChannel, Setting, SetupPlan } from "../plan/setup-plan.ts";
import { expand, USUAL_FACTOR } from "../uncertainty/expand.ts";
import type { Propagated } from "../uncertainty/propagate.ts";
import { type Heat, heatAt } from "./heat.ts";
import { causesOf } from "./plan-doubt.ts";
import { doubtAt, standardAt } from "./position-doubt.ts";
import { resolveNames } from "./resolve-names.ts";
import { type Rig, rigServos } from "./rig-servos.ts";
import { type DrawnDoubt, type DrawOptions, simulatePosition } from "./simulate-position.ts";
import { sortKeys } from "./sort-keys.ts";

/** How sure one setting of a plan is, and why. Degrees of deflection. */
export interface SettingDoubt extends Pick<Setting, "control" | "detent" | "stick" | "when" | "surface"> {
  readonly channel: number;
  readonly servo: string;
  readonly pulseUs: number;
  readonly deflectionDeg: number;
  readonly standardDeg: number;
  /** Expanded: `k` standard doubts to either side hold about `coverage`. Source: JCGM 100:2008 6.3.3. */
  readonly expandedDeg: number;
  readonly k: number;
  readonly coverage: number;
  /** Effective degrees of freedom; absent where nothing limits them. */
  readonly dof?: number;
  /** Causes, the largest first; the shares of the variance add up to 1. */
  readonly budget: readonly DoubtCause[];
  /** The largest cause, and what the expanded doubt would be if that one were halved. */
  readonly improve?: { readonly cause: string; readonly halvedDeg: number };
  /** What heat or cold may add in flight, where the model states its temperatures. It adds to the expanded doubt as it is. */
  readonly heat?: Heat;
  readonly drawn?: DrawnDoubt;
}

/** Which settings to look at, and whether to draw. Names that the plan has not give nothing. */
export interface DoubtOptions {
  readonly surface?: string;
  readonly control?: string;
  /** Of selectors, only at this detent; of sticks, only at this end. */
  readonly detent?: string;
  readonly stick?: -1 | 1;
  readonly draw?: DrawOptions;
}

/** The doubt of every setting of `plan`, which is the plan of `model`, in its order; without those whose bench knows no degrees. */
export function listDoubts(
  declared: Model,
  plan: Pick<SetupPlan, "channels">,
  { surface, control, detent, stick, draw }: DoubtOptions = {},
): readonly SettingDoubt[] {
  const model = sortKeys(declared);
  // What is wrong with the model is in its plan already.
  const report = () => undefined;
  const rigs = resolveNames(model, report).surfaces.flatMap(
    (named) => rigServos(named, model.radio, model.instruments, report) ?? [],
  );
  return plan.channels.flatMap((channel) =>
    channel.settings
      .filter((one) => surface === undefined || one.surface === surface)
      .filter((one) => control === undefined || one.control === control)
      .filter((one) => detent === undefined || one.detent === detent)
      .filter((one) => stick === undefined || one.stick === stick)
      .flatMap((setting) =>
        rigs
          .filter(({ named }) => isDrivenBy(named, channel, setting))
          .flatMap((rig) => describeDoubt(rig, channel.channel, setting, model, draw) ?? []),
      ),
  );
}

function isDrivenBy({ id, surface }: Rig["named"], { servos }: PlanChannel, setting: Setting): boolean {
  return servos.includes(id) && surface === setting.surface;
}

function describeDoubt(
  rig: Rig,
  channel: number,
  { control, detent, stick, when, surface, enter }: Setting,
  model: Model,
  draw: DrawOptions | undefined,
): SettingDoubt | undefined {
  const { pulseUs } = enter;
  const doubt = doubtAt(rig, pulseUs);
  const standardDeg = standardAt(rig, pulseUs);
  const deflectionDeg = rig.travel.placeAt(pulseUs);
  if (doubt === undefined || standardDeg === undefined || deflectionDeg === undefined) return undefined;
  const improve = halveLargest(doubt);
  const heat = heatAt(rig, pulseUs, model);
  const drawn = draw && simulatePosition(rig, pulseUs, draw);
  return {
    channel,
    servo: rig.named.id,
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    ...(when === undefined ? {} : { when }),
    surface,
    pulseUs,
    deflectionDeg,
    standardDeg,
    expandedDeg: expand(standardDeg),
    k: USUAL_FACTOR,
    coverage: 0.95,
    ...(Number.isFinite(doubt.dof) ? { dof: doubt.dof } : {}),
    budget: causesOf(rig, doubt),
    ...(improve === undefined ? {} : { improve }),
    ...(heat === undefined ? {} : { heat }),
    ...(drawn === undefined ? {} : { drawn }),
  };
}

/** Half a cause is a quarter of its variance. */
function halveLargest({ standard, budget: [largest] }: Propagated): SettingDoubt["improve"] {
  if (largest === undefined) return undefined;
  return { cause: largest.name, halvedDeg: expand(standard * Math.sqrt(1 - 0.75 * largest.share)) };
}
