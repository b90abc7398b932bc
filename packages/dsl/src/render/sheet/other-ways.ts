import type { SetupPlan } from "@hingeline/core";
import { numbersOf } from "../numbers.ts";
import { visibleText } from "../visible-text.ts";
import { type Element, h, trueMinus } from "./element.ts";
import { degreesText, type SheetServo, shortSetting, shortState } from "./servo-on-sheet.ts";

/** The same settings for transmitters that ask for them in another way than the pages of the servos show. */
export function otherWays(servos: readonly SheetServo[], plan: SetupPlan): Element {
  return h(
    "dl",
    {},
    servos.flatMap((servo) => {
      const lines = linesOf(servo, plan);
      return lines.length === 0
        ? []
        : [
            h("dt", {}, h("bdi", {}, visibleText(servo.described.id))),
            h("dd", {}, trueMinus(lines.join(" "))),
          ];
    }),
  );
}

function linesOf({ channel, settings }: SheetServo, { radio }: SetupPlan): string[] {
  const numbers = numbersOf(radio);
  const list = (name: string, of: (setting: (typeof settings)[number]) => number | undefined) => {
    const values = settings.flatMap((setting) => {
      const value = of(setting);
      return value === undefined ? [] : [`${visibleText(shortSetting(setting))}: ${numbers.percent(value)}`];
    });
    return values.length === 0 ? [] : [`${name} ${values.join("; ")}.`];
  };
  const { summed } = channel;
  return [
    ...(numbers.byShare
      ? list("Percent of the signal scale", ({ enter }) => enter.percent)
      : list("Share between the limits", ({ enter }) => enter.sharePercent)),
    ...list("Input of the curve", ({ enter }) =>
      channel.curve === undefined ? undefined : enter.commandPercent,
    ),
    ...(summed === undefined
      ? []
      : [
          `Where percents are added up, ${degreesText(summed.errorDeg, 2)} off at ${shortState(summed.when)}.`,
        ]),
  ];
}
