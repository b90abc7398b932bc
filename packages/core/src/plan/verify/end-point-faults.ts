import { toPulse } from "../../signal/percent.ts";
import { pct } from "../../units/quantity.ts";
import { type Entered, type Sent, send } from "./entered.ts";
import type { Hypothesis, Suspect } from "./hypothesis.ts";

/** The radio's limits do the other thing: they cut where the plan has them stretch, or stretch where it has them cut. */
export function endPointFaults(suspects: readonly Suspect[]): readonly Hypothesis[] {
  const [first] = suspects;
  if (first === undefined) return [];
  const [planned, found] = first.entered.scaling ? ["scale", "clamp"] : ["clamp", "scale"];
  const others = suspects.map(({ entered }): Entered => ({ ...entered, scaling: !entered.scaling }));
  const changed = [others, others.map(withFailsafeCut)];
  const sent = changed.flatMap((all) => [all.map(send), all.map(sendUpTo100)]);
  return sent.map((all) => ({
    kind: "otherEndPoints",
    channels: suspects.map(({ plan }) => plan.channel),
    prediction: { sent: new Map(all.map((one, index) => [others[index]?.channel ?? 0, one])) },
    place: planned,
    other: found,
  }));
}

/** Whether limits that clamp cut the failsafe too is for the radio. */
function withFailsafeCut(entered: Entered): Entered {
  const { failsafe, lowPercent, highPercent } = entered;
  return { ...entered, failsafe: Math.min(Math.max(failsafe, lowPercent), highPercent) };
}

/** The limits as found by positions of -100 and +100, which reach them where limits scale, and may fall short where they clamp. */
function sendUpTo100(entered: Entered): Sent {
  const sent = send(entered);
  if (entered.scaling) return sent;
  const [lowUs, highUs] = [-100, 100].map((percent) => toPulse(entered.scale, pct(percent)));
  return { ...sent, lowUs: Math.max(sent.lowUs, lowUs ?? 0), highUs: Math.min(sent.highUs, highUs ?? 0) };
}
