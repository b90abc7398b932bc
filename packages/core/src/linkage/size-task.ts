import type { Deg, DegPerUs, Mm } from "../units/quantity.ts";
import type { RuleMeasurements } from "./ball-rod-from-rule.ts";

/** What is fixed, what is wanted, and what can be chosen from. */
export interface SizeTask {
  /** Where the hinge lies from the shaft: in one plane, or as a rule measures it in space. */
  readonly place: SizePlace;
  /** Deflections to reach: up 0 or negative, down 0 or positive, not both 0. */
  readonly wanted: { readonly up: Deg; readonly down: Deg };
  /** The rotation that the servo has either side of its middle, and what it turns a microsecond, above 0 both. */
  readonly servo: { readonly travel: Deg; readonly rotation: DegPerUs };
  /** Drilled holes, from the shaft and from the hinge. */
  readonly armHoles: readonly Mm[];
  readonly hornHoles: readonly Mm[];
  /** Angles that the arm can take with the servo at its middle, from aft (0) through up (90); see `splineAngles`. */
  readonly armAngles: readonly Deg[];
  /** Angles that the horn can take with the surface level, counted the same way. */
  readonly hornAngles: readonly Deg[];
  /** Where level may lie, as rotation from the servo's middle; only 0 where left out. */
  readonly levelRotations?: readonly Deg[];
}

/** Where shaft and hinge lie: in one plane, `base` aft and `rise` up, or anywhere in space. */
export type SizePlace =
  | { readonly kind: "plane"; readonly base: Mm; readonly rise: Mm }
  | ({ readonly kind: "space" } & Omit<RuleMeasurements, "arm" | "armAt" | "horn" | "hornAt" | "rod">);
