import {
  type Control,
  compile,
  type Deg,
  deg,
  type Enter,
  type Finding,
  hasErrors,
  type Model,
  type Percent,
  type PlanChannel,
  pct,
  type Selector,
  type SetupPlan,
  type Us,
  us,
} from "@hingeline/core";
import { settingAt } from "./setting-at.ts";

/** A compiled model: the plan as neutral data, and its values by the model's own names. */
export interface Setup<M extends Model> {
  readonly document: SetupPlan;
  /**
   * What to enter for a surface with `control` at `position`, the selectors in `when` at their detents and every other control at
   * rest. A control that does not move the surface leaves it where the others put it. Where servos of a surface have several
   * channels, `servo` names the one. Throws a `RangeError` for a name that the model has not, and for a combination that is no
   * setting of the plan.
   */
  at<C extends keyof M["controls"] & string>(
    control: C,
    position: PositionOf<M["controls"][C]>,
    surface: keyof M["surfaces"] & string,
    options?: { readonly servo?: string; readonly when?: DetentsOf<M["controls"]> },
  ): Entered<M["radio"]["name"]>;
}

/** The detents of a selector; the two ends of a stick. */
export type PositionOf<C> = C extends Selector<infer Detent> ? Detent : C extends Control ? -1 | 1 : never;

/** Detents of selectors, by the names of both. */
export type DetentsOf<Controls> = {
  readonly [C in keyof Controls as Controls[C] extends Selector ? C : never]?: PositionOf<Controls[C]>;
};

/** A value to enter, on the radio's own scale. */
export interface Entered<Scale extends string> {
  readonly percent: Percent<Scale>;
  readonly pulse: Us;
  /** What to add to the channel's percent at rest. */
  readonly add: Percent<Scale>;
  /** Between the channel's low limit (-100) and high limit (+100). */
  readonly share: Percent<never>;
  /** What the surface then does; absent where the bench knows no degrees, and where no setting moves it. */
  readonly deflection?: Deg;
}

/** Thrown once, with everything that is wrong, for a model whose plan must not be entered. */
export class PlanRefused extends Error {
  readonly findings: readonly Finding[];

  constructor(document: SetupPlan) {
    const errors = document.findings.filter(({ severity }) => severity === "error");
    const lines = errors.map(({ at, message, do: remedy }) => `  ${at}: ${message} ${remedy}`);
    super(
      `"${document.model}" has ${errors.length} error(s); its plan must not be entered.\n${lines.join("\n")}`,
    );
    this.name = "PlanRefused";
    this.findings = document.findings;
  }
}

/** A model's setup plan, typed by its names. Throws `PlanRefused` where it has an error; `compile` of the core never throws. */
export function plan<const M extends Model>(model: M): Setup<M> {
  const document = compile(model);
  if (hasErrors(document)) throw new PlanRefused(document);
  return {
    document,
    at(control, position, surface, { servo, when = {} } = {}) {
      const channel = channelOf(document, surface, servo);
      const setting = settingAt(model, channel, surface, control, { ...when, [control]: position });
      return entered(setting?.enter ?? { ...channel.neutral, addPercent: 0 }, setting?.gives?.deflectionDeg);
    },
  };
}

function channelOf({ channels }: SetupPlan, surface: string, servo: string | undefined): PlanChannel {
  const id = servo === undefined ? surface : `${surface}.${servo}`;
  const of = (name: string) => name === id || (servo === undefined && name.startsWith(`${surface}.`));
  const [channel, ...others] = channels.filter(({ servos }) => servos.some(of));
  if (channel === undefined) throw new RangeError(`this plan has no servo "${id}"`);
  if (others.length > 0) {
    const names = [channel, ...others].flatMap(({ servos }) => servos.filter(of));
    throw new RangeError(`"${surface}" has several servos, ${names.join(", ")}: name one`);
  }
  return channel;
}

function entered<Scale extends string>(
  enter: Omit<Enter, "commandPercent">,
  deflectionDeg: number | undefined,
): Entered<Scale> {
  return {
    percent: pct(enter.percent),
    pulse: us(enter.pulseUs),
    add: pct(enter.addPercent),
    share: pct(enter.sharePercent),
    ...(deflectionDeg === undefined ? {} : { deflection: deg(deflectionDeg) }),
  };
}
