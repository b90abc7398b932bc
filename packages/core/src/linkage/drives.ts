import { ballRodDrive } from "./ball-rod.ts";
import { bentRodDrive } from "./bent-rod.ts";
import { cablesDrive } from "./cables.ts";
import { chainDrive } from "./chain.ts";
import type { Drive, LinkageProblem } from "./drive.ts";
import type { Linkage } from "./linkage.ts";
import { pushrodDrive } from "./pushrod.ts";
import { torqueRodDrive } from "./torque-rod.ts";
import { trackDrive } from "./track.ts";

type Make = (linkage: Linkage, levelDeg: number) => Drive | LinkageProblem;

/**
 * One kind's way to make a drive. A kind made of other linkages gets `make` for them. `levelDeg` is the rotation, in the
 * linkage's own count, at which the model is level: other than 0 only behind another link of a chain.
 */
type Maker<Kind extends Linkage["kind"]> = (
  linkage: Extract<Linkage, { kind: Kind }>,
  make: Make,
  levelDeg: number,
) => Drive | LinkageProblem;

/** Every kind of linkage: one file, one line. */
const makers: { readonly [Kind in Linkage["kind"]]: Maker<Kind> } = {
  pushrod: pushrodDrive,
  ballRod: ballRodDrive,
  bentRod: bentRodDrive,
  track: trackDrive,
  torqueRod: torqueRodDrive,
  cables: cablesDrive,
  chain: chainDrive,
};

/**
 * Makes a linkage computable: its branch through the level position as declared, with forward, inverse, ratio and levers.
 * Or says with numbers why it has no level position: a problem has a `kind`, a drive has none. Never throws.
 */
export function drive(linkage: Linkage): Drive | LinkageProblem {
  return make(linkage, 0);
}

function make(linkage: Linkage, levelDeg: number): Drive | LinkageProblem {
  // The table pairs every kind with its own maker; the compiler cannot follow that through the look-up.
  const maker = makers[linkage.kind] as (
    linkage: Linkage,
    make: Make,
    levelDeg: number,
  ) => Drive | LinkageProblem;
  return maker(linkage, make, levelDeg);
}
