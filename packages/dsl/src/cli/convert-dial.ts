import {
  formatTrimmed,
  type PlanChannel,
  type Radio,
  type SetupPlan,
  type SignalScale,
  shareScale,
} from "@hingeline/core";
import { visibleText } from "../render/visible-text.ts";
import { type Dial, limitLines, scaleLine, wrappedLine } from "./convert-lines.ts";

/** The dial of a scale of whose limits nothing is known. */
export function statedDial(scale: SignalScale): Dial {
  const text = "right for a limit; for a position only on a radio whose limits clamp";
  return { ...percentDial(scale), tail: wrappedLine("The percent", text) };
}

/** The dial of a radio. Where its limits scale, a percent is right for a limit alone. */
export function radioDial(radio: Radio): Dial {
  if (radio.endPoints === "clamp") return percentDial(radio);
  const text =
    "not this percent: limits scale on this radio, so a position is entered as a share of the way between the two limits of its channel; give --channel to have it";
  return { ...percentDial(radio), enter: "As a limit", tail: wrappedLine("As position", text) };
}

/** The dial of a position on one channel of a plan, no further than its limits; a sentence where the plan has no such channel. */
export function positionDial({ channels }: SetupPlan, radio: Radio, channel: number): Dial | string {
  const found = channels.find((one) => one.channel === channel);
  if (found === undefined)
    return `The plan has no channel ${channel}; its channels are ${channels.map((one) => one.channel).join(", ")}.`;
  const { low, high } = found.limits;
  const name = nameOf(found);
  const past = `the limits of ${name}`;
  const head = [scaleLine(radio), ...limitLines(name, low, high, radio.endPoints === "scale")];
  if (radio.endPoints === "clamp")
    return { ...percentDial(radio), head, ends: [low.percent, high.percent], past };
  return {
    scale: shareScale([low.pulseUs, high.pulseUs], radio),
    head,
    value: "Share",
    unit: "share",
    enter: "Enter",
    zero: "middle",
    ends: [-100, 100],
    past,
    tail: [],
  };
}

function percentDial(scale: SignalScale): Dial {
  const { reach } = scale;
  return {
    scale,
    head: [scaleLine(scale)],
    value: "Percent",
    unit: "%",
    enter: "Enter",
    zero: "centre",
    ends: [-reach, reach],
    past: `the ${formatTrimmed(reach, 6)} % that this radio reaches`,
    tail: [],
  };
}

function nameOf({ channel, servos }: PlanChannel): string {
  return `channel ${channel} (${servos.map(visibleText).join(" and ")})`;
}
