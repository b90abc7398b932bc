import { type Assumed, formatTrimmed, type SettingDoubt } from "@hingeline/core";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

interface CauseWords {
  /** What it is called in a table. */
  readonly name: string;
  readonly meaning: string;
  /** How a model states it; left out, none does. */
  readonly stated?: string;
}

const byRule = "take readings, or write instruments: { throw: mm(...) }";
const readings = "take readings";

/** Dimensions of a linkage, by their names in it. */
const lengths = [
  ["arm", "shaft to rod pin"],
  ["horn", "hinge to rod pin"],
  ["base", "shaft to hinge or track, aft"],
  ["rise", "shaft to hinge or track, up"],
  ["rod", "pin to pin"],
  ["aft", "shaft to hinge, aft"],
  ["up", "shaft to hinge, up"],
  ["armAft", "how far the arm's pins lie behind the shaft"],
  ["hornAft", "how far the horn's pins lie behind the hinge line"],
] as const;
const angles = [
  ["armAt", "arm angle", "how the arm stands at level"],
  ["hornAt", "horn angle", "how the horn stands at level"],
  ["trackAt", "track angle", "how the track lies"],
  ["bend", "bend", "how far the wire is bent"],
  ["skew", "skew", "how far the wire leans from square to the hinge"],
] as const;

/** By the names of a budget; a cause that is not among them goes by its own name. */
const causes: ReadonlyMap<string, CauseWords> = new Map<string, CauseWords>([
  [
    "freePlay",
    {
      name: "free play",
      meaning: "how far the surface moves to either side with the servo at rest",
      stated: "measure it and write freePlay: deg(...) on the surface",
    },
  ],
  [
    "meter",
    {
      name: "meter",
      meaning: "what the angle meter is true to",
      stated: "write instruments: { deflection: deg(...) }",
    },
  ],
  [
    "rule",
    {
      name: "steel rule",
      meaning: "what the steel rule is true to that read the throws",
      stated: "write instruments: { throw: mm(...) }",
    },
  ],
  ["zero", { name: "zero", meaning: "how well meter or rule stood at zero when the surface was at level" }],
  ["alignment", { name: "alignment", meaning: "how square the meter stood to the hinge" }],
  [
    "tester",
    {
      name: "tester",
      meaning: "what the pulse that the servo tester shows is true to",
      stated: "write instruments: { pulse: us(...) }",
    },
  ],
  ["step", { name: "step", meaning: "the smallest step of the radio: what lies between two cannot be sent" }],
  ["deadBand", { name: "dead band", meaning: "the pulse span in which the servo does not answer" }],
  ["jitter", { name: "jitter", meaning: "how much the pulse itself trembles" }],
  [
    "rotation",
    { name: "rotation", meaning: "what the servo's stated rotation is true to", stated: readings },
  ],
  ...lengths.map(([cause, what]) => [cause, { name: cause, meaning: what, stated: byRule }] as const),
  ...angles.map(([cause, name, what]) => [cause, { name, meaning: what, stated: readings }] as const),
]);

/** "freePlay" as "free play", "links.0.horn", the horn of the first link of a chain, as "horn 1". */
export function wordsOf(cause: string): string {
  const [link, own] = linkOf(cause);
  return `${causes.get(own)?.name ?? visibleText(own)}${link}`;
}

/** "links.0.horn" as " 1" and "horn"; a cause of no chain has no number. */
function linkOf(cause: string): readonly [link: string, own: string] {
  const parts = cause.split(".");
  const places = parts.flatMap((part, index) => (parts[index - 1] === "links" ? [Number(part) + 1] : []));
  return places.length === 0 ? ["", cause] : [` ${places.join(".")}`, parts.at(-1) ?? cause];
}

/** What marks a cause that the model does not state. */
export const assumedMark = "*";

/** Each of these causes with what it is, what was assumed of it and on which surfaces, and how the model would state it. */
export function causeLines(
  doubts: readonly SettingDoubt[],
  shown: readonly string[],
  columns: number,
): string[] {
  const surfaces = [...new Set(doubts.map(({ surface }) => surface))];
  return shown.flatMap((cause) => {
    const taken = new Map<string, Assumed>();
    for (const { surface, budget } of doubts)
      for (const one of budget)
        if (one.cause === cause && one.assumed !== undefined) taken.set(surface, one.assumed);
    const [assumed] = taken.values();
    const [, own] = linkOf(cause);
    const { meaning = "", stated } = causes.get(own) ?? {};
    const where = taken.size < surfaces.length ? ` for ${[...taken.keys()].map(visibleText).join(", ")}` : "";
    const remedy = stated === undefined ? "" : `: ${stated}`;
    const text =
      assumed === undefined ? meaning : `${meaning}; assumed ${amountOf(assumed)}${where}${remedy}`;
    return hang(`  ${wordsOf(cause).padEnd(11)} `, text, columns);
  });
}

function amountOf(assumed: Assumed): string {
  return Object.entries(assumed)
    .map(([unit, amount]) => `${formatTrimmed(amount, 2)} ${unit === "percent" ? "% of it" : unit}`)
    .join("");
}
