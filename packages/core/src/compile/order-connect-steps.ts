import type { ChannelEntries } from "./order-entries.ts";
import type { OrderFacts } from "./order-entry-steps.ts";
import type { Draft } from "./order-walk.ts";
import { listWords, nameChannels } from "./order-words.ts";

const watch = "At unexpected movement, buzzing or high current pull the receiver's supply.";

/** Servos in, one linkage after the other, and the deflections measured. */
export function connectSteps({ changes, inPlace }: OrderFacts): Draft[] {
  const entries = changes.changed.map(({ to }) => to);
  if (entries.length === 0) return [];
  const connecting = inPlace
    ? takeMetersOut(entries)
    : [...plugIn(entries), ...entries.flatMap(connect(entries))];
  return [
    ...connecting,
    {
      ...on("measure", "on"),
      text: `Measure every deflection of ${nameChannels(entries)}, compare it with the plan, and sign. Then switch the receiver off first, the transmitter last.`,
    },
  ];
}

function takeMetersOut(entries: readonly ChannelEntries[]): Draft[] {
  return [
    { ...off("connect", "on"), text: "Switch the receiver off. Take the pulse meter and the Y lead out." },
    {
      ...on("connect", "on"),
      text: `Switch the receiver on. Move ${servosOf(entries)} a little first, then to every position. ${watch}`,
    },
  ];
}

function plugIn(entries: readonly ChannelEntries[]): Draft[] {
  return [
    {
      ...off("plug in", "off"),
      text: `Switch the receiver off. Plug the servos of ${nameChannels(entries)} in, their linkages off.`,
    },
    {
      ...on("plug in", "off"),
      text: "Switch the transmitter on with every control at rest, then the receiver, its supply limited in current. Every arm must stand as it was measured.",
    },
  ];
}

function connect(all: readonly ChannelEntries[]): (entries: ChannelEntries, index: number) => Draft[] {
  return (entries, index) => {
    const earlier = all.slice(0, index).flatMap(({ servos }) => servos);
    const partner = earlier.find((servo) => entries.servos.some((own) => sharesSurface(servo, own)));
    // Common practice, no source, the 100 mA an assumption of experience: two servos that do not fight hold with hardly more current.
    const fighting =
      partner === undefined
        ? ""
        : ` Together with ${partner} it must hold with no more current than both alone and 100 mA, at every position.`;
    return [
      {
        ...off("connect", "on"),
        text: `Switch the receiver off. Connect the linkage of ${listWords(entries.servos)} without force, the surface where it rests.`,
      },
      {
        ...on("connect", "on"),
        text: `Switch the receiver on. Move ${listWords(entries.servos)} a little first, then to the near positions, the far ones, and together with others.${fighting} ${watch}`,
      },
    ];
  };
}

function servosOf(entries: readonly ChannelEntries[]): string {
  return listWords(entries.flatMap(({ servos }) => servos));
}

/** Whether "rudder.upper" and "rudder.lower" move one surface. */
function sharesSurface(one: string, other: string): boolean {
  return one.includes(".") && one.split(".")[0] === other.split(".")[0];
}

function off(phase: string, linkage: "on" | "off") {
  return { phase, supply: "off", linkage, edits: [] } as const;
}

function on(phase: string, linkage: "on" | "off") {
  return { phase, supply: "on", linkage, edits: [] } as const;
}
