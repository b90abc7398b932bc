import type { Setting } from "@hingeline/core";
import { formatTrimmed } from "@hingeline/core";
import { visibleText } from "./visible-text.ts";

/** A combination of controls: "flap at landing, roll at +1"; "every control at rest" where none is named. */
export function stateText(state: Readonly<Record<string, string | number>>): string {
  const parts = Object.entries(state).map(
    ([control, position]) => `${visibleText(control)} at ${positionText(position)}`,
  );
  return parts.length === 0 ? "every control at rest" : parts.join(", ");
}

/** What a setting, or something about one, is for: "flap at landing", "roll at -1, phase at thermal". */
export function settingText({
  control,
  detent,
  stick,
  when = {},
}: Pick<Setting, "control" | "detent" | "stick" | "when">): string {
  const own = `${visibleText(control)} at ${positionText(detent ?? stick ?? 0)}`;
  return Object.keys(when).length === 0 ? own : `${own}, ${stateText(when)}`;
}

/** A detent's name; a stick's position with its sign, and where it is past full travel, that trim is in it. */
function positionText(position: string | number): string {
  if (typeof position === "string") return visibleText(position);
  const text = `${position > 0 ? "+" : ""}${formatTrimmed(position, 3)}`;
  return Math.abs(position) > 1 ? `${text} (trim added)` : text;
}
