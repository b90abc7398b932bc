/**
 * What was measured after a plan was entered. Everything that is measured may be left out or read "not measured". Units are in the
 * keys; deflections are positive trailing edge down.
 */
export interface AsBuilt {
  readonly format: "hingeline/as-built";
  readonly version: 1;
  readonly model: string;
  /** The plan that was entered: its fingerprint, or the first eight digits of it that a sheet shows, or more. */
  readonly plan: string;
  /** Who measured, who checked it, when; as written by hand. */
  readonly by?: string;
  readonly checkedBy?: string;
  readonly date?: string;
  /** Half-widths of the doubt of one reading; left out, 1 us, and for deflections what the plan's bench was read with. */
  readonly instruments?: { readonly pulseUs?: number; readonly deflectionDeg?: number };
  readonly channels: readonly AsBuiltChannel[];
}

/** A number that was read, or that it was not. */
export type AsRead = number | "not measured";

/** One channel, read at the receiver with a pulse meter in the servo's place. */
export interface AsBuiltChannel {
  readonly channel: number;
  /** What the label on each servo that is fitted reads, by servo; "" where nobody looked. */
  readonly labels?: Readonly<Record<string, string>>;
  /** The pulses at which the channel is cut, where the transmitter shows them or can be driven to them. */
  readonly limitLowUs?: AsRead;
  readonly limitHighUs?: AsRead;
  /** The lowest and the highest pulse seen while every control went to all its ends, alone and together, trims too. */
  readonly sweptLowUs?: AsRead;
  readonly sweptHighUs?: AsRead;
  /** With every control at rest. */
  readonly neutralUs?: AsRead;
  /** With the transmitter off. */
  readonly failsafeUs?: AsRead;
  /** What the receiver sends before it hears the transmitter; "none" where it sends no pulse. */
  readonly powerUpUs?: AsRead | "none";
  readonly settings?: readonly AsBuiltSetting[];
}

/** One setting of the plan, named as the plan names it. */
export interface AsBuiltSetting {
  readonly control: string;
  readonly detent?: string;
  readonly stick?: -1 | 1;
  readonly when?: Readonly<Record<string, string>>;
  readonly surface: string;
  readonly pulseUs?: AsRead;
  /** Of the surface, with the linkage on. */
  readonly deflectionDeg?: AsRead;
}
