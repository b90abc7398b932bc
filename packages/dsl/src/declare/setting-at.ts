import type { Model, PlanChannel, Setting } from "@hingeline/core";

/** Where controls stand: a selector's detent, a stick's end. */
type State = Readonly<Record<string, string | number>>;

/**
 * The one setting that a surface has with `control` and others as `state` says and the rest of them at rest; undefined where
 * none of them moves it. Throws a `RangeError` for a name that the model has not, and where several move the surface at once:
 * their sum is no setting.
 */
export function settingAt(
  model: Model,
  { settings }: PlanChannel,
  surface: string,
  control: string,
  state: State,
): Setting | undefined {
  for (const [name, at] of Object.entries(state)) refuseUnknown(model, name, at);
  const standing = (name: string) => state[name] ?? restOf(model, name);
  const here = settings.filter(
    (one) =>
      one.surface === surface &&
      positionOf(one) === standing(one.control) &&
      Object.entries(one.when ?? {}).every(([name, detent]) => detent === standing(name)),
  );
  const [moving, other] = here.filter((one) => positionOf(one) !== restOf(model, one.control));
  if (moving !== undefined && other !== undefined)
    throw new RangeError(
      `"${moving.control}" and "${other.control}" both move "${surface}": their sum is no setting of the plan`,
    );
  return moving ?? here.find((one) => one.control === control);
}

function refuseUnknown({ controls }: Model, name: string, at: string | number): void {
  const control = Object.hasOwn(controls, name) ? controls[name] : undefined;
  if (control === undefined)
    throw new RangeError(`this model has no control "${name}"; it has ${Object.keys(controls).join(", ")}`);
  const positions: readonly (string | number)[] = control.kind === "selector" ? control.detents : [-1, 1];
  if (!positions.includes(at))
    throw new RangeError(`"${name}" has no position ${JSON.stringify(at)}; it has ${positions.join(", ")}`);
}

function positionOf({ detent, stick }: Setting): string | number | undefined {
  return detent ?? stick;
}

function restOf({ controls }: Model, name: string): string | number | undefined {
  const control = controls[name];
  return control?.kind === "selector" ? control.detents[0] : control && (control.rests ?? 0);
}
