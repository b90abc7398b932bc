import type { Linkage } from "../linkage/linkage.ts";
import type { SignalScale } from "../signal/signal-scale.ts";
import type {
  Amps,
  Celsius,
  Deg,
  DegPerS,
  DegPerUs,
  Metres,
  Mm,
  Mps,
  Newtons,
  Nm,
  Percent,
  Seconds,
  Us,
  Volts,
} from "../units/quantity.ts";

/** A model aircraft as plain JSON data; what `model()` of the DSL returns and what every command takes. */
export interface Model {
  readonly format: "hingeline/model";
  readonly version: 1;
  readonly name: string;
  readonly radio: Radio;
  readonly instruments?: Instruments;
  readonly surfaces: Readonly<Record<string, Surface>>;
  readonly groups?: Readonly<Record<string, Group>>;
  readonly controls: Readonly<Record<string, Control>>;
  readonly moves: Readonly<Record<string, Moves>>;
  /** For a surface or group whose moves pass what is safe: the controls that give way, first the one that yields first. */
  readonly yields?: Readonly<Record<string, readonly string[]>>;
  /** Seconds for the longest way between two detents of a selector; shorter ways take less. */
  readonly transit?: Readonly<Record<string, Seconds>>;
  readonly airspeed?: Airspeed;
  /** Where the model is flown; left out, sea level in the standard atmosphere. */
  readonly field?: { readonly height: Metres; readonly temperature?: Celsius };
  /** Coldest and hottest at which the model is flown. */
  readonly temperatures?: readonly [Celsius, Celsius];
  /** What feeds the servos. */
  readonly supply?: { readonly voltage?: Volts; readonly current?: Amps };
  /** Where each control stands at loss of signal; a control not named: first detent, centred. */
  readonly failsafe?: ControlState;
}

/** One position of controls: a detent's name for a selector, -1 to +1 for a stick. */
export type ControlState = Readonly<Record<string, string | number>>;

/** A signal scale and how the radio treats its outputs. */
export interface Radio<Name extends string = string> extends SignalScale<Name> {
  /** `clamp`: limits cut the output after everything is summed; `scale`: limits stretch it and positions are shares. */
  readonly endPoints: "clamp" | "scale";
  /** The least percent, to either side of the centre, to which a limit can be set; left out, any. */
  readonly leastLimit?: Percent;
  /** Points of an output's curve, 0 where there is none. */
  readonly curvePoints: number;
  /** Whether those points stand equally spaced (left out) or wherever the plan puts them. */
  readonly curveSpacing?: "equal" | "free";
  /** Time from one pulse to the next. */
  readonly frame?: Seconds;
  /** What the receiver sends before it hears the transmitter. */
  readonly powerUp?: Us;
}

/** Half-width of each reading's doubt, and what kind of angle meter was used. */
export interface Instruments {
  readonly pulse?: Us;
  readonly deflection?: Deg;
  readonly throw?: Mm;
  /** `square`: held square to the hinge (default); `alongFlight`: laid along the flight line; `gravity`: one-axis gravity meter. */
  readonly meter?: "square" | "alongFlight" | "gravity";
}

/** A hinged part and what moves it. */
export interface Surface {
  /** Hinge line to trailing edge, square to the hinge, where throws are read. */
  readonly chord?: Mm;
  readonly span?: Mm;
  /** Whole chord of the section that the surface is the rear of; left out, four times the surface's. */
  readonly section?: Mm;
  /** Own hinge-moment coefficients, per degree, negative where the air turns the surface back; left out, a plain flap of a thin section. */
  readonly hingeMoment?: { readonly byIncidence: number; readonly byDeflection: number };
  /** Largest incidence of the section at the speeds stated; left out, 0. */
  readonly incidence?: Deg;
  /** Moment of inertia about the hinge, kilogram square metres. */
  readonly inertia?: number;
  /** Height of the trailing edge above the line through hinge and chord at level, for a dropped or raised hinge. */
  readonly trailingEdgeRise?: Mm;
  /** `straight`: throw is the straight line between the two trailing-edge points (default); `vertical`: its height. */
  readonly throwBy?: "straight" | "vertical";
  readonly hinge?: { readonly sweep?: Deg; readonly tilt?: Deg };
  /** The surface moves by plus and minus this with the servo at rest. */
  readonly freePlay?: Deg;
  /** Deflections from level that full stick must still reach at every detent: up and down, both positive. */
  readonly reserve?: { readonly up?: Deg; readonly down?: Deg };
  /** Deflections the builder allows: [lowest, highest], trailing edge down positive. */
  readonly allowed?: readonly [Deg, Deg];
  readonly servo?: Servo;
  readonly servos?: Readonly<Record<string, Servo>>;
}

/** One servo of a surface: its channel, its bench and what turns its shaft into deflection. */
export interface Servo {
  /** Output of the receiver, 1 to 32. */
  readonly channel: number;
  /** Shares its channel with another servo through a Y lead. */
  readonly yLead?: true;
  /** The label on the servo itself, to tell a swap. */
  readonly label?: string;
  readonly type?: ServoType;
  /** Largest pulse span that a device behind the receiver (a stabiliser, say) may add to either side. */
  readonly added?: Us;
  /** Sense of the shaft as the pulse rises, seen from the port tip. */
  readonly turns?: "clockwise" | "anticlockwise";
  readonly bench: Bench;
  readonly linkage?: Linkage;
  readonly rod?: Rod;
  /** Force along the rod that its other parts hold, by name: horn, clevis, hinge. */
  readonly holds?: Readonly<Record<string, Newtons>>;
}

/** What a rod is made of, to tell when it buckles. */
export interface Rod {
  readonly material: "steel" | "aluminium" | "titanium" | "brass" | "carbon" | "glass" | "hardwood";
  readonly diameter: Mm;
  /** Inner diameter of a tube. */
  readonly bore?: Mm;
  /** Length that stands free. */
  readonly length: Mm;
  /** What it lies along, from servo to horn, which grows with heat as well; left out, its growth is not looked at. */
  readonly along?: Rod["material"];
  /** How its ends are held; left out, `pinned`. */
  readonly ends?: "pinned" | "fixedPinned" | "fixed" | "fixedFree";
}

/** What a servo's sheet says of its kind; what is left out is not known. */
export interface ServoType {
  readonly torque?: Nm;
  readonly speed?: DegPerS;
  readonly rotation?: DegPerUs;
  readonly deadBand?: Us;
  /** Voltage at which torque and speed are stated. */
  readonly ratedAt?: Volts;
  readonly stallCurrent?: Amps;
  /** An analogue servo, which short frames can overheat. */
  readonly analogue?: true;
  /** Shortest and longest pulse the bare servo takes. */
  readonly accepts?: readonly [Us, Us];
}

/** What was measured with a servo tester. `up` left out: the surface does not go above level. */
export interface Bench {
  readonly up?: Stop;
  readonly level: Us;
  readonly down: Stop;
  /** Pulse span kept inside both stops; computed from the doubt where it is left out, `us(0)` turns it off. */
  readonly guard?: Us;
  readonly readings?: readonly Reading[];
  /** Holding current away from the stops. */
  readonly freeCurrent?: Amps;
  readonly measured?: Measured;
}

/** When and how a bench was measured; kept for the record, never computed with. */
export interface Measured {
  /** ISO 8601 date. */
  readonly on?: string;
  readonly supply?: Volts;
  readonly temperature?: Celsius;
}

/** The last pulse at which all was well, alone or with the reason that it is the last. */
export type Stop = Us | MeasuredStop;

/** A stop with the reason why the travel ends there. */
export interface MeasuredStop {
  readonly kind: "stop";
  readonly pulse: Us;
  readonly reason: StopReason;
  /** Holding current at the stop. */
  readonly current?: Amps;
}

/** Why a travel ends: parts touch, the linkage comes to a dead centre, the structure bends, the servo or its signal ends, or the builder wants it so. */
export type StopReason = "contact" | "deadCentre" | "structure" | "servo" | "signal" | "choice";

/** A pulse, the deflection, throw or extension read at it, and for readings taken both ways, which way the servo came. */
export type Reading =
  | readonly [pulse: Us, at: Deg | AtThrow | AtExtension]
  | readonly [pulse: Us, at: Deg | AtThrow | AtExtension, way: "out" | "back"];

/** A place stated as a throw. */
export interface AtThrow {
  readonly kind: "throw";
  /** Trailing-edge travel at the surface's chord, trailing edge down positive. */
  readonly mm: Mm;
}

/** How far a carriage is out along its track; needs a linkage that ends in a track. */
export interface AtExtension {
  readonly kind: "extension";
  readonly mm: Mm;
}

/** A place stated as a pulse of the servo itself. */
export interface AtPulse {
  readonly kind: "pulse";
  readonly us: Us;
}

/** Share of the pulse span from level: +1 the stop down, -1 the stop up. */
export interface AtPart {
  readonly kind: "part";
  readonly part: number;
}

/** Where a move wants a surface: an angle, a throw, an extension, or on a bench without readings a pulse or a part. */
export type Place = Deg | AtThrow | AtExtension | AtPulse | AtPart;

/** Surfaces that one name moves. */
export type Group =
  | { readonly kind: "together"; readonly surfaces: readonly string[] }
  /** Surfaces that must agree within a tolerance all along their travel. */
  | { readonly kind: "matched"; readonly surfaces: readonly string[]; readonly within: Deg };

/** What the pilot moves. */
export type Control = Selector | Stick;

/** A control with named positions, in order; it starts at the first. */
export interface Selector<Detent extends string = string> {
  readonly kind: "selector";
  readonly detents: readonly Detent[];
}

/** A control that runs from -1 to +1. */
export interface Stick {
  readonly kind: "stick";
  /** Largest trim, percent of the stick's travel to one side. */
  readonly trim?: Percent;
  /** Where the control rests: 0 for a stick that centres (default), -1 or +1 for a lever that rests at an end. */
  readonly rests?: -1 | 0 | 1;
}

/** What a selector does: detent -> surface or group -> place. */
export type SelectorMoves = Readonly<Record<string, Readonly<Record<string, Place>>>>;
/** What a stick does: surface or group -> places at -1 and at +1, straight-line from either end to level. */
export type StickMoves = Readonly<Record<string, readonly [Place, Place]>>;
/** Moves that depend on the detent of another selector. */
export interface PerMoves {
  readonly per: string;
  readonly cases: Readonly<Record<string, SelectorMoves | StickMoves>>;
}

/** What one control does to the surfaces. */
export type Moves = SelectorMoves | StickMoves | PerMoves;

/** The fastest speed at which each detent, or each stick at full travel, is used; `otherwise` holds for all not named. */
export interface Airspeed {
  readonly otherwise: Mps;
  readonly [control: string]: Mps | Readonly<Record<string, Mps>>;
}
