import { type Address, formatAddress } from "../address/address.ts";
import type { Finding } from "./finding.ts";
import { type Facts, type Sentence, sentences } from "./sentences.ts";

/** Every kind of finding that `compile` makes, by its stable kebab-case name. */
export type FindingCode = keyof typeof sentences;
/** What the sentences of a finding are filled with: names, and numbers with the unit in the key. */
export type FactsOf<Code extends FindingCode> =
  (typeof sentences)[Code] extends Sentence<infer F> ? F : never;

/** The one way to make a finding: its sentences filled with `facts`, whose numbers are kept as data. */
export function makeFinding<Code extends FindingCode>(
  code: Code,
  at: Address,
  facts: FactsOf<Code>,
): Finding {
  const sentence = sentences[code] as unknown as Sentence<Facts>;
  const given = facts as Facts;
  const numbers: Record<string, number> = {};
  for (const [key, value] of Object.entries(given)) if (typeof value === "number") numbers[key] = value;
  return {
    code,
    severity: sentence.severity,
    at: formatAddress(at),
    message: sentence.message(given),
    do: sentence.remedy(given),
    numbers,
  };
}
