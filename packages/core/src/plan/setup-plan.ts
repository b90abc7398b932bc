import type { Finding } from "../findings/finding.ts";

/**
 * Everything to enter and to do, as neutral JSON. Units are in the keys; deflections are positive trailing edge down. A plan that has a
 * finding of severity `error` must not be entered: its procedure is empty, and what its channels say is there to find the fault.
 */
export interface SetupPlan {
  readonly format: "hingeline/setup-plan";
  readonly version: 1;
  readonly model: string;
  readonly radio: PlanRadio;
  /** By name. */
  readonly controls: readonly PlanControl[];
  readonly channels: readonly PlanChannel[];
  readonly matches: readonly PlanMatch[];
  /** Surfaces that several servos move. */
  readonly gangs: readonly PlanGang[];
  readonly findings: readonly Finding[];
  readonly procedure: readonly ProcedureStep[];
  readonly cautions: readonly string[];
}

/** A plan without the order in which it is entered. */
export type PlanInTheMaking = Omit<SetupPlan, "procedure">;

/** One thing that the pilot moves: a selector, at rest at its first detent, or a stick. */
export type PlanControl =
  | { readonly control: string; readonly kind: "selector"; readonly detents: readonly string[] }
  | {
      readonly control: string;
      readonly kind: "stick";
      /** Where it stands at rest: 0 in its centre, a lever at the end -1 or +1. */
      readonly rests: -1 | 0 | 1;
      /** What its trim adds to its travel on either side, percent of that side. */
      readonly trimPercent: number;
    };

/** The signal scale that every percent of the plan stands on. */
export interface PlanRadio {
  readonly name: string;
  readonly centreUs: number;
  readonly per100Us: number | { readonly below: number; readonly above: number };
  readonly reachPercent: number;
  readonly stepPercent: number;
  readonly endPoints: "clamp" | "scale";
  readonly curvePoints: number;
  /** Whether they stand equally spaced (left out) or where the plan puts them. */
  readonly curveSpacing?: "equal" | "free";
}

/** Everything to enter for one output of the receiver. */
export interface PlanChannel {
  readonly channel: number;
  /** `"flapLeft"`, or `"rudder.upper"` where a surface has several servos. */
  readonly servos: readonly string[];
  /** Labels on the servos themselves, by servo, where the model states them. */
  readonly labels?: Readonly<Record<string, string>>;
  /** Pulse as deflection grows. */
  readonly direction: "rising" | "falling";
  /** Lowest and highest pulse that may be emitted: the stops of the bench, a guard inside. */
  readonly safeUs: readonly [number, number];
  /** What is kept clear of the stops, [at the lowest pulse, at the highest]: the guard, what a device behind the receiver may add, what the builder does not allow. */
  readonly guardUs: readonly [number, number];
  readonly limits: { readonly low: PercentPulse; readonly high: PercentPulse };
  /** The channel with every control at rest. */
  readonly neutral: Position;
  /**
   * For a transmitter that has a curve for each output: points by rising input, to be entered as they are, `percent` where limits
   * clamp and `sharePercent` where they scale. With it a position is entered as its `commandPercent`, in place of its percent or
   * share, and added positions add up in degrees. The procedure enters none.
   */
  readonly curve?: readonly CurvePoint[];
  /** Furthest that the surface is from what the curve's input asks, between its points too, degrees. */
  readonly curveWorstDeg?: number;
  readonly settings: readonly Setting[];
  readonly extremes: { readonly low: Extreme; readonly high: Extreme };
  /** The setting that is least sure, and why; absent where the bench knows no degrees. */
  readonly doubt?: PlanDoubt;
  /** What a transmitter gives that adds percents, at the combination where it is furthest off; absent where nothing adds up. */
  readonly summed?: Summed;
  readonly transits?: readonly Transit[];
  /** Where the receiver sends the channel before it hears the transmitter, where the model says so. */
  readonly powerUp?: PercentPulse & { readonly deflectionDeg?: number };
  readonly load?: Load;
  readonly failsafe: Position;
}

/** A percent of the plan's radio and the pulse that it gives. */
export interface PercentPulse {
  readonly percent: number;
  readonly pulseUs: number;
}

/** A position of a channel: what is typed for it is the percent where limits clamp, the share where they scale. */
export interface Position extends PercentPulse {
  /** Between this channel's low limit (-100) and high limit (+100). */
  readonly sharePercent: number;
}

/** One point of a channel's curve: input, -100 to +100, and output. */
export interface CurvePoint extends Position {
  readonly commandPercent: number;
}

/** One position of one control: what the surface should do, and the value that makes it do so. */
export interface Setting {
  readonly control: string;
  /** The selector's detent; a stick has `stick` in its place. */
  readonly detent?: string;
  /** The stick's end. */
  readonly stick?: -1 | 1;
  /** Detents of other selectors that this setting needs; all others stand at rest. */
  readonly when?: Readonly<Record<string, string>>;
  readonly surface: string;
  /** Of the surface, every other control at rest; absent where the bench knows no degrees. */
  readonly wanted?: {
    readonly deflectionDeg: number;
    readonly throwMm?: number;
    readonly extensionMm?: number;
  };
  /** Before any rounding. */
  readonly exact: PercentPulse;
  readonly enter: Enter;
  /** Absent where the bench knows no degrees. */
  readonly gives?: {
    readonly deflectionDeg: number;
    readonly errorDeg: number;
    readonly uncertaintyDeg?: number;
  };
  /** Absent where airspeed, size or servo are not known. */
  readonly load?: SettingLoad;
}

/** Estimated load of the servo at a setting. */
export interface SettingLoad {
  readonly airspeedMps: number;
  /** About the hinge. */
  readonly momentNm: number;
  /** At the servo. */
  readonly torqueNm: number;
  /** Of the stall torque at the supply in use. */
  readonly share: number;
  /** Airspeed at which half of the stall torque would be used. */
  readonly limitMps?: number;
  /** Along the rod, where the linkage is known. */
  readonly rodN?: number;
}

/** The value to enter, in each of the ways in which transmitters ask for it. */
export interface Enter extends Position {
  /** What to add to the channel's value at rest: percents where limits clamp, shares where they scale. */
  readonly addPercent: number;
  /** On the curve's input: -100 lowest, +100 highest safe deflection; absent where the bench knows no degrees. */
  readonly commandPercent?: number;
}

/** The furthest pulse that is ever asked of a channel. */
export interface Extreme extends PercentPulse {
  /** The combination of controls that asks it. A stick beyond 1 stands for its trim added to full travel. */
  readonly when: Readonly<Record<string, string | number>>;
}

/** The timed travel between two detents. */
export interface Transit {
  readonly control: string;
  readonly from: string;
  readonly to: string;
  readonly seconds: number;
  /** The same speed for transmitters that ask for the time from -100 to +100 percent. */
  readonly secondsPerFullScale: number;
  /** What the servo needs without load. */
  readonly fastestSeconds?: number;
}

/** The setting that loads the servo most. An estimate; it never clears flutter. */
export interface Load {
  readonly worstNm: number;
  /** Lowest frequency at which the surface swings on its servo, hertz, where its inertia is known: a figure, no verdict. */
  readonly swingHz?: number;
  readonly heldNm: number;
  readonly share: number;
  readonly when: Readonly<Record<string, string | number>>;
  readonly airspeedMps: number;
}

/**
 * What is taken of a cause that the model does not state: a half-width; of alignment and jitter, which no model states, a standard
 * doubt, and of a servo's stated rotation a standard doubt in percent of it.
 */
export type Assumed =
  | { readonly deg: number }
  | { readonly mm: number }
  | { readonly us: number }
  | { readonly percent: number };

/** One cause of a deflection's doubt. */
export interface DoubtCause {
  readonly cause: string;
  /** The standard doubt (k = 1) that it alone makes, degrees. */
  readonly standardDeg: number;
  /** Its share of the variance, 0 to 1. */
  readonly share: number;
  /** What is taken of it because the model does not state it; absent where it does. */
  readonly assumed?: Assumed;
}

/** The doubt of one setting's deflection and its causes. */
export interface PlanDoubt {
  readonly control: string;
  readonly detent?: string;
  readonly stick?: -1 | 1;
  /** Expanded, k = 2. */
  readonly uncertaintyDeg: number;
  /** Causes, the largest first; the shares of the variance add up to 1. */
  readonly budget: readonly DoubtCause[];
}

/** How far two surfaces that should agree come apart at worst. */
export interface PlanMatch {
  readonly group: string;
  readonly withinDeg: number;
  readonly worstDeg: number;
  readonly between: readonly [string, string];
  readonly surfaces: readonly [string, string];
  /** Share of the way from the first to the second detent. */
  readonly at: number;
  /** Expanded doubt of the difference, k = 2; a difference below it is equal within measurement. */
  readonly uncertaintyDeg: number;
}

/** Several servos that move one surface together. */
export interface PlanGang {
  readonly surface: string;
  readonly servos: readonly string[];
  /** Pulses that belong together, in the order of `servos`. */
  readonly points: readonly { readonly deflectionDeg: number; readonly pulsesUs: readonly number[] }[];
  /** Furthest that the servos pull the surface apart on the way between entered pulses, degrees of deflection. */
  readonly worstDeg: number;
  /** Estimated torque with which they then strain against each other; absent where the servos' types do not tell. */
  readonly fightNm?: number;
}

/** What a transmitter that adds percents would give in place of what is wanted. */
export interface Summed {
  readonly wantedDeg: number;
  readonly givesDeg: number;
  readonly errorDeg: number;
  readonly pulseUs: number;
  readonly when: Readonly<Record<string, string | number>>;
}

/** One thing to do. While `linkage` is off, every linkage of a channel that the procedure edits is off, or its servo unplugged. */
export interface ProcedureStep {
  readonly phase: string;
  /** The receiver's supply during the step. */
  readonly supply: "on" | "off";
  readonly linkage: "on" | "off";
  readonly text: string;
  /** In this order. */
  readonly edits: readonly Edit[];
  /** What a pulse meter must show at the end of the step; a reading outside stops the procedure. */
  readonly expect: readonly ChannelPulses[];
  /** The lowest and highest pulse that a channel can emit after the step, whatever is moved; only where the step changed it. */
  readonly reach: readonly ChannelPulses[];
}

/** A channel and the two pulses between which it stands. */
export interface ChannelPulses {
  readonly channel: number;
  readonly pulseUs: readonly [low: number, high: number];
}

/** One change to one channel's memory. */
export interface Edit {
  readonly channel: number;
  /** `clear`: a new memory, nothing mixed in; `neutral`: the value at rest; `direction`: a larger percent gives a longer pulse. */
  readonly set:
    | "clear"
    | "limitLow"
    | "limitHigh"
    | "neutral"
    | "direction"
    | "detent"
    | "stick"
    | "transit"
    | "failsafe";
  /** Of a limit the percent; of a position the percent where limits clamp, the share between the limits where they scale. */
  readonly percent?: number;
  /** Of a detent or stick end: what it adds to the channel's value at rest, on the same scale as `percent`. */
  readonly addPercent?: number;
  /** Of a detent, a stick end or a transit. */
  readonly control?: string;
  readonly detent?: string;
  readonly stick?: -1 | 1;
  /** Detents of other selectors at which the value holds. */
  readonly when?: Readonly<Record<string, string>>;
  /** Of a transit. */
  readonly seconds?: number;
}
