import {
  type Control,
  compile,
  type Deg,
  deg,
  type Enter,
  type Finding,
  type Model,
  type Percent,
  pct,
  type Selector,
  type SetupPlan,
  type Us,
  us,
} from "@hingeline/core";

/** A compiled model: the plan as neutral data, and its values by the model's own names. */
export interface Setup<M extends Model> {
  readonly document: SetupPlan;
  /**
   * What to enter for a surface with `control` at `position` and every other control at rest. A control that does not move the
   * surface leaves it at rest. Where a surface has several servos, `servo` names the one.
   */
  at<C extends keyof M["controls"] & string>(
    control: C,
    position: PositionOf<M["controls"][C]>,
    surface: keyof M["surfaces"] & string,
    options?: { readonly servo?: string; readonly when?: Readonly<Record<string, string>> },
  ): Entered<M["radio"]["name"]>;
}

/** The detents of a selector; the two ends of a stick. */
export type PositionOf<C> = C extends Selector<infer Detent> ? Detent : C extends Control ? -1 | 1 : never;

/** A value to enter, on the radio's own scale. */
export interface Entered<Scale extends string> {
  readonly percent: Percent<Scale>;
  readonly pulse: Us;
  /** What to add to the channel's percent at rest. */
  readonly add: Percent<Scale>;
  /** Between the channel's low limit (-100) and high limit (+100). */
  readonly share: Percent<never>;
  /** What the surface then does; absent where the bench knows no degrees. */
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
  if (document.findings.some(({ severity }) => severity === "error")) throw new PlanRefused(document);
  return {
    document,
    at(control, position, surface, { servo, when = {} } = {}) {
      const id = servo === undefined ? undefined : `${surface}.${servo}`;
      const channel = document.channels.find(({ servos }) =>
        servos.some((name) =>
          id === undefined ? name === surface || name.startsWith(`${surface}.`) : name === id,
        ),
      );
      if (channel === undefined) throw new RangeError(`this plan has no servo "${id ?? surface}"`);
      const setting = channel.settings.find(
        (one) =>
          one.surface === surface &&
          one.control === control &&
          (one.detent ?? one.stick) === position &&
          sameNames(one.when ?? {}, when),
      );
      const rest = { ...channel.neutral, addPercent: 0 };
      return entered(setting?.enter ?? rest, setting?.gives?.deflectionDeg);
    },
  };
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

function sameNames(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean {
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => a[name] === b[name]);
}
