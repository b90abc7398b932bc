import type { OrderFacts } from "./order-entry-steps.ts";
import type { Draft } from "./order-walk.ts";

/** Reading everything back before a linkage goes on: all ends, loss of signal, and what the receiver sends as it starts. */
export function checkSteps({ changes, inPlace }: OrderFacts): Draft[] {
  const channels = changes.changed.map(({ to }) => to.channel);
  if (channels.length === 0) return [];
  const step = {
    phase: "read back",
    supply: "on",
    linkage: inPlace ? "on" : "off",
    edits: [],
  } as const;
  return [
    {
      ...step,
      text: "Move every control to all its ends, alone and together, trims too. No pulse may leave its range.",
      read: { channels, show: "reach" },
    },
    {
      ...step,
      text: "Switch the transmitter off and read the failsafe of each channel.",
      read: { channels, show: "failsafe" },
    },
    {
      ...step,
      text: "Switch the transmitter on with every control at rest, then the receiver off and on.",
      read: { channels, show: { positions: {} } },
    },
    ...(inPlace
      ? []
      : [
          {
            ...step,
            text: "Switch the transmitter off, then the receiver off and on. A channel that sends a pulse outside its range before it hears the transmitter must never be connected; one that sends none is right.",
            read: { channels, show: "safe" },
          } as const,
        ]),
  ];
}
