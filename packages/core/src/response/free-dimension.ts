import type { Dimension } from "../linkage/dimensions.ts";
import { isLinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { FreeValue } from "./fit-shape.ts";

/**
 * How far a dimension may plausibly be off (standard): a hole of 2 mm spacing or a rule across a wing; a protractor held to an
 * arm. Common practice, no source.
 */
const PLAUSIBLE = { mm: 2, deg: 5 };

/** A dimension of a linkage, free to be fitted. */
export function freeDimension(dimension: Dimension): FreeValue {
  return {
    declared: dimension.value,
    doubt: PLAUSIBLE[dimension.unit],
    driveWith: (value) => {
      const made = drive(dimension.with(value));
      return isLinkageProblem(made) ? undefined : made;
    },
  };
}
