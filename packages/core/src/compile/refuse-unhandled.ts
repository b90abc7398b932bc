import type { Model } from "../model/model.ts";
import type { Report } from "./report.ts";

/** What this version cannot compute yet is refused by name: a plan that leaves it out would be wrong. */
export function refuseUnhandled(model: Model, report: Report): void {
  for (const name of Object.keys(model.yields ?? {}))
    report("not-handled", ["yields", name], { what: "yields" });
  for (const name of Object.keys(model.transit ?? {}))
    report("not-handled", ["transit", name], { what: "transit" });
  if (model.airspeed !== undefined) report("not-handled", ["airspeed"], { what: "airspeed" });
  for (const [name, surface] of Object.entries(model.surfaces)) {
    if (Object.keys(surface.servos ?? {}).length > 1)
      report("not-handled", ["surfaces", name, "servos"], { what: "A surface with several servos" });
    for (const servo of [surface.servo, ...Object.values(surface.servos ?? {})])
      if (servo?.linkage !== undefined)
        report("not-handled", ["surfaces", name, "servo", "linkage"], { what: "A linkage" });
  }
}
