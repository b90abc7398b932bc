import type { Model } from "../model/model.ts";
import type { Report } from "./report.ts";

/** What this version cannot compute yet is refused by name: a plan that leaves it out would be wrong. */
export function refuseUnhandled(model: Model, report: Report): void {
  for (const [name, surface] of Object.entries(model.surfaces)) {
    for (const servo of [surface.servo, ...Object.values(surface.servos ?? {})])
      if (servo?.linkage !== undefined)
        report("not-handled", ["surfaces", name, "servo", "linkage"], { what: "A linkage" });
  }
}
