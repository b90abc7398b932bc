import { listWords } from "../plan/name-channel.ts";
import type { ChannelEntries } from "./order-entries.ts";
import type { OrderFacts } from "./order-entry-steps.ts";
import type { Draft } from "./order-walk.ts";
import { nameChannels } from "./order-words.ts";

const watch = "At unexpected movement, buzzing or high current pull the receiver's supply.";

/** Servos in, one linkage after the other, and the deflections measured. */
export function connectSteps({ changes, inPlace }: OrderFacts): Draft[] {
  const entries = changes.changed.map(({ to }) => to);
  if (entries.length === 0) return [];
  const connecting = inPlace ? takeMetersOut(entries) : [...plugIn(entries), ...connect(entries)];
  return [
    ...connecting,
    {
      ...on("measure", "on"),
      // Common practice, no source: a reversed control is found by standing behind the model, not by a pulse.
      text: `Stand behind the model and move every control as in flight: each surface must go the way the pilot expects. Measure every deflection of ${nameChannels(entries)}, compare it with the plan, and sign. Then switch the receiver off first, the transmitter last.`,
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

function connect(entries: readonly ChannelEntries[]): Draft[] {
  // Of each surface with several servos, the first whose linkage is on.
  const connected = new Map<string, string>();
  return entries.flatMap(({ servos }) => {
    const ganged = servos.filter((servo) => servo.includes("."));
    const surfaces = new Set(ganged.map(surfaceOf));
    const [, partner] = [...connected].find(([surface]) => surfaces.has(surface)) ?? [];
    for (const servo of ganged) if (!connected.has(surfaceOf(servo))) connected.set(surfaceOf(servo), servo);
    // Common practice, no source, the 100 mA an assumption of experience: two servos that do not fight hold with hardly more current.
    const fighting =
      partner === undefined
        ? ""
        : ` Together with ${partner} it must hold with no more current than both alone and 100 mA, at every position.`;
    return [
      {
        ...off("connect", "on"),
        text: `Switch the receiver off. Connect the linkage of ${listWords(servos)} without force, the surface where it rests.`,
      },
      {
        ...on("connect", "on"),
        text: `Switch the receiver on. Move ${listWords(servos)} a little first, then to the near positions, the far ones, and together with others.${fighting} ${watch}`,
      },
    ];
  });
}

function servosOf(entries: readonly ChannelEntries[]): string {
  return listWords(entries.flatMap(({ servos }) => servos));
}

/** "rudder" of "rudder.upper" and "rudder.lower". */
function surfaceOf(servo: string): string {
  return servo.split(".", 1)[0] ?? servo;
}

function off(phase: string, linkage: "on" | "off") {
  return { phase, supply: "off", linkage, edits: [] } as const;
}

function on(phase: string, linkage: "on" | "off") {
  return { phase, supply: "on", linkage, edits: [] } as const;
}
