import type { Model } from "../model/model.ts";
import { MOST_PLAY } from "../surface/free-play.ts";
import { type ServoCurrent, supplyDemand } from "../surface/supply-demand.ts";
import { amps } from "../units/quantity.ts";
import type { Motion } from "./output.ts";
import type { Report } from "./report.ts";

/** Whether the supply feeds all servos, and whether any surface has more play than should be. */
export function checkSupply(motions: readonly Motion[], model: Model, report: Report): void {
  const servos = motions.flatMap(({ rigs }) =>
    rigs.map(({ named }): ServoCurrent => {
      const { freeCurrent } = named.servo.bench;
      // Where it is not known what a servo draws when stalled, another is the one that stalls; it holds all the same.
      const stall = named.servo.type?.stallCurrent ?? amps(0);
      return { stall, ...(freeCurrent === undefined ? {} : { holding: freeCurrent }) };
    }),
  );
  const supplyAmps = model.supply?.current;
  const { oneStalled } = supplyDemand(servos);
  const isKnown = servos.some(({ stall }) => stall > 0);
  if (supplyAmps !== undefined && isKnown && oneStalled > supplyAmps)
    report("supply-short", ["supply", "current"], {
      neededAmps: oneStalled,
      supplyAmps,
      servos: servos.length,
    });
  for (const { name, surface, moves } of motions) {
    if (surface.freePlay === undefined) continue;
    const bySticks = moves.some(({ control }) => model.controls[control]?.kind === "stick");
    const mostDeg = bySticks ? MOST_PLAY.aileronOrElevator : MOST_PLAY.flap;
    const playDeg = 2 * surface.freePlay;
    if (playDeg > mostDeg)
      report("play-large", ["surfaces", name, "freePlay"], { surface: name, playDeg, mostDeg });
  }
}
