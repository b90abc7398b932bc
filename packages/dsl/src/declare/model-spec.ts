import type {
  Control,
  Instruments,
  Model,
  Mps,
  Radio,
  Seconds,
  Selector,
  Servo,
  Surface,
} from "@hingeline/core";
import type { Matched, Together } from "./groups.ts";
import type { Mistake } from "./mistake.ts";
import type { SelectorMovesOf, SelectorPer, StickMovesOf, StickPer } from "./per.ts";

/** The controls of a model by name; their detents are literal types. */
export type Controls = Readonly<Record<string, Control>>;

/**
 * What `model` takes. The parameters hold names only: of the radio's scale, of the surfaces, of the groups, and of the
 * controls with their detents.
 */
export interface ModelSpec<
  RadioName extends string,
  SurfaceName extends string,
  GroupName extends string,
  C extends Controls,
> {
  readonly radio: Radio<RadioName>;
  /** Half-width of each reading's doubt. */
  readonly instruments?: Instruments;
  readonly surfaces: { readonly [Name in SurfaceName]: SurfaceSpec };
  readonly groups?: { readonly [Name in GroupName]: GroupSpec<NoInfer<SurfaceName>> };
  readonly controls: C;
  /** What each control does to each surface or group, every detent of a selector named. */
  readonly moves: MovesSpec<NoInfer<C>, NoInfer<SurfaceName | GroupName>>;
  /** For a surface, or a servo as `rudder.upper`, the controls that give way where moves pass what is safe, in order. */
  readonly yields?: YieldsSpec<NoInfer<SurfaceName>, NoInfer<GroupName>, NoInfer<keyof C>>;
  /** Seconds for the longest way between two detents; shorter ways take less. */
  readonly transit?: { readonly [Name in SelectorName<NoInfer<C>>]?: Seconds };
  /** The fastest at which each detent or stick is used; `otherwise` holds for all not named. */
  readonly airspeed?: { readonly otherwise: Mps } & AirspeedSpec<NoInfer<C>>;
  readonly field?: Model["field"];
  readonly temperatures?: Model["temperatures"];
  readonly supply?: Model["supply"];
  /** Where each control stands at loss of signal: a detent, or -1 to +1; not named: first detent, centred. */
  readonly failsafe?: FailsafeSpec<NoInfer<C>>;
}

/** A surface with one servo or with several named ones. */
export type SurfaceSpec = OneServo | SeveralServos;

/** A surface moved by one servo. */
export interface OneServo extends Omit<Surface, "servo" | "servos"> {
  readonly servo: Servo;
  readonly servos?: Mistake<"a surface has either `servo` or `servos`, not both">;
}

/** A surface moved by several servos, by name. */
export interface SeveralServos extends Omit<Surface, "servo" | "servos"> {
  readonly servos: Readonly<Record<string, Servo>>;
  // No sentence here: it would stand in every message about a servo.
  readonly servo?: never;
}

/** A group of the surfaces named. */
export type GroupSpec<SurfaceName extends string> = Together<SurfaceName> | Matched<SurfaceName>;

/** Those names of controls that are selectors. */
export type SelectorName<C extends Controls> = {
  [Name in keyof C & string]: C[Name] extends Selector ? Name : never;
}[keyof C & string];

/** The detents of a selector; never for a stick. */
export type DetentOf<Of> = Of extends Selector<infer Detent> ? Detent : never;

/** What each control does, by the control's name. */
export type MovesSpec<C extends Controls, Target extends string> = {
  readonly [Name in keyof C]?: C[Name] extends Selector<infer Detent>
    ?
        | SelectorMovesOf<Detent, Target>
        | { [S in SelectorName<C>]: SelectorPer<S, DetentOf<C[S]>, Detent, Target> }[SelectorName<C>]
    : StickMovesOf<Target> | { [S in SelectorName<C>]: StickPer<S, DetentOf<C[S]>, Target> }[SelectorName<C>];
};

/** For a surface, a servo or a group, the controls that give way, in order. */
export type YieldsSpec<SurfaceName extends string, GroupName extends string, ControlName> = {
  readonly [Name in SurfaceName | `${SurfaceName}.${string}` | GroupName]?: readonly ControlName[];
};

/** The fastest at which a control is used: for each detent of a selector, or for all of it. */
export type AirspeedSpec<C extends Controls> = {
  readonly [Name in keyof C]?: C[Name] extends Selector<infer Detent>
    ? Mps | { readonly [D in Detent]?: Mps }
    : Mps;
};

/** Where each control stands at loss of signal: a detent, or a stick's place from -1 to +1. */
export type FailsafeSpec<C extends Controls> = {
  readonly [Name in keyof C]?: C[Name] extends Selector<infer Detent> ? Detent : number;
};
