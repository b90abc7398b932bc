import type { Drive, LinkageProblem } from "../linkage/drive.ts";
import { drive } from "../linkage/drives.ts";
import type { Linkage } from "../linkage/linkage.ts";

// A linkage of a model never changes, and is asked for its drive by every reading and place stated as an extension.
const drives = new WeakMap<Linkage, Drive | LinkageProblem>();

/** The drive of a linkage as declared, made once; or why there is none. */
export function driveOf(linkage: Linkage): Drive | LinkageProblem {
  const known = drives.get(linkage);
  if (known !== undefined) return known;
  const made = drive(linkage);
  drives.set(linkage, made);
  return made;
}
