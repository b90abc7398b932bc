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

/** By the names of a budget; a cause that is not among them goes by its own name. */
const causes: ReadonlyMap<string, CauseWords> = new Map([
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
]);

/** "freePlay" as "free play". */
export function wordsOf(cause: string): string {
  return causes.get(cause)?.name ?? visibleText(cause);
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
    const { meaning = "", stated } = causes.get(cause) ?? {};
    const where = taken.size < surfaces.length ? ` for ${[...taken.keys()].map(visibleText).join(", ")}` : "";
    const remedy = stated === undefined ? "" : `: ${stated}`;
    const text =
      assumed === undefined ? meaning : `${meaning}; assumed ${amountOf(assumed)}${where}${remedy}`;
    return hang(`  ${wordsOf(cause).padEnd(12)}`, text, columns);
  });
}

function amountOf(assumed: Assumed): string {
  return Object.entries(assumed)
    .map(([unit, amount]) => `${formatTrimmed(amount, 2)} ${unit}`)
    .join("");
}
