import { differenceDoubt, judgeTolerance } from "../../uncertainty/agreement.ts";
import { expand } from "../../uncertainty/expand.ts";
import type { AsBuilt } from "../as-built.ts";
import type { SetupPlan } from "../setup-plan.ts";
import { meterDoubt } from "./judge-lines.ts";
import { positionKey } from "./place-words.ts";
import type { DeflectionVerdict, LineVerdict, MatchVerdict } from "./verification.ts";

/** Left against right of every matched group at every setting that both sides have, guarded by the doubt of both readings. Source: JCGM 106:2012 8.3. */
export function judgeMatches(
  plan: SetupPlan,
  verdicts: readonly LineVerdict[],
  { instruments = {} }: AsBuilt,
): readonly MatchVerdict[] {
  const deflections = verdicts.filter((one): one is DeflectionVerdict => one.quantity === "deflection");
  const doubtOf = ({ channel }: DeflectionVerdict) => {
    const own = plan.channels.find((one) => one.channel === channel);
    return own === undefined ? undefined : meterDoubt(own, instruments.deflectionDeg);
  };
  return plan.matches.flatMap(({ group, surfaces, withinDeg }) => {
    const [first, second] = surfaces.map((name) => deflections.filter(({ place }) => place.surface === name));
    return (first ?? []).flatMap((line): MatchVerdict[] => {
      const twin = second?.find(
        (one) => positionKey(one.place) === positionKey(line.place) && isTwin(one, line),
      );
      const doubts = [line, twin].map((one) => (one === undefined ? undefined : doubtOf(one)));
      const [own, other] = doubts;
      if (twin === undefined || own === undefined || other === undefined) return [];
      const standard = differenceDoubt(own, other);
      const shared = {
        quantity: "match",
        group,
        surfaces,
        place: line.place,
        withinDeg,
        doubtDeg: expand(standard),
      } as const;
      if (line.readDeg === undefined || twin.readDeg === undefined)
        return [{ ...shared, outcome: "notMeasured" }];
      const byDeg = line.readDeg - twin.readDeg;
      return [{ ...shared, byDeg, outcome: judgeTolerance(byDeg, standard, withinDeg) }];
    });
  });
}

/** Meant to stand alike: a roll moves both sides of a group, but not to the same place. */
function isTwin(one: DeflectionVerdict, line: DeflectionVerdict): boolean {
  const { expectedDeg, withinDeg = 0 } = line;
  return Math.abs(one.expectedDeg - expectedDeg) <= withinDeg;
}
