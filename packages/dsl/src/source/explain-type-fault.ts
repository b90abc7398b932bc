import type { Refusal } from "./source.ts";

/**
 * What the compiler says of a builder's slip, in plain words, and what to do. What is none of the usual slips keeps the words of its
 * last reason.
 * @param chain the compiler's message and the reasons below it, each a sentence, one at least
 */
export function explainTypeFault(chain: readonly string[]): Pick<Refusal, "what" | "remedy"> {
  const last = chain.at(-1) ?? "";
  const { what, remedy } =
    explainSentence(last) ??
    explainName(last) ??
    explainAbsence(last) ??
    explainValue(chain) ??
    asItStands(last);
  const parts = chain
    .flatMap((line) => incompatible.exec(line)?.[1] ?? [])
    .filter((name) => !name.startsWith("["));
  return { what: parts.length === 0 ? what : `In ${parts.join(".")}: ${what}`, remedy };
}

type Explained = Pick<Refusal, "what" | "remedy">;

const incompatible = /^(?:Types of property|The types of) '([^']+)' are incompatible/;

/** A type that is there for its sentence. */
function explainSentence(last: string): Explained | undefined {
  const sentence = /\bMistake<"([^"]+)">/.exec(last)?.[1];
  return sentence === undefined ? undefined : { what: `${upper(sentence)}.`, remedy: "Correct it." };
}

function explainName(last: string): Explained | undefined {
  const name = /'([^']+)' does not exist in type/.exec(last)?.[1];
  return name === undefined
    ? undefined
    : { what: `"${name}" is not known here.`, remedy: meant(last) ?? "Correct the name, or take it out." };
}

function explainAbsence(last: string): Explained | undefined {
  const one = /^Property '([^']+)' is missing in type/.exec(last)?.[1];
  if (one !== undefined) return { what: `"${one}" is missing.`, remedy: "Add it." };
  const several = /is missing the following properties from type '.*': (.+)$/.exec(last)?.[1];
  return several === undefined
    ? undefined
    : { what: `These are missing: ${several.replace(/\.$/, "")}.`, remedy: "Add them." };
}

/** A value of another unit, or of none, or something else where a unit is wanted. */
function explainValue(chain: readonly string[]): Explained | undefined {
  const pairs = chain.flatMap((line) => {
    const [, given, wanted] = notAssignable.exec(line) ?? [];
    return given === undefined || wanted === undefined ? [] : [{ given, wanted }];
  });
  const place = pairs.find(({ wanted }) => placeSpec.test(wanted));
  const { given = "", wanted = "" } = pairs.at(-1) ?? {};
  const units = chain.some((line) => incompatible.exec(line)?.[1] === "[unit]");
  const unit = (units ? /^"(.+)"$/ : /^\{ readonly \[unit\]: "(.+)"; \}$/).exec(wanted)?.[1];
  const write = placeSpec.exec(place?.wanted ?? "")?.[1];
  if (unit !== undefined) {
    const call = constructors[unit];
    return {
      what: `${units ? `A value in ${given.slice(1, -1)}` : describe(given)} stands where one in ${unit} is wanted.`,
      remedy:
        write !== undefined
          ? `${upper(write)}.`
          : call === undefined
            ? "Correct it."
            : `Write it as ${call}(…).`,
    };
  }
  if (place !== undefined && write !== undefined)
    return { what: `${describe(place.given)} stands where a place is wanted.`, remedy: `${upper(write)}.` };
  return given === "number" && quantity.test(wanted)
    ? {
        what: "A plain number stands where a value with its unit is wanted.",
        remedy: "Write it with its unit, as us(…) or deg(…).",
      }
    : undefined;
}

const notAssignable =
  /^(?:Type|Argument of type) '(.+)' is not assignable to (?:type|parameter of type) '(.+?)'(?:\.|$)(?: Did you|$)/;
const placeSpec = /^PlaceSpec<"([^"]+)">(?: \| undefined)?$/;
const quantity = /\b(?:Us|Deg|Stop)\b/;

/** The function of each unit, by the unit's name in its type. */
const constructors: Readonly<Record<string, string>> = {
  amperes: "amps",
  degrees: "deg",
  "degrees Celsius": "celsius",
  "degrees per microsecond": "degPerUs",
  "degrees per second": "degPerS",
  grams: "grams",
  metres: "m",
  "metres per second": "mps",
  microseconds: "us",
  millimetres: "mm",
  "newton metres": "nm",
  newtons: "newtons",
  percent: "pct",
  seconds: "s",
  volts: "volts",
};

function describe(given: string): string {
  if (given === "number") return "A plain number";
  return given.startsWith('"') ? given : `A value of type ${given}`;
}

function asItStands(last: string): Explained {
  const [, given, wanted] = notAssignable.exec(last) ?? [];
  const what =
    given === undefined || wanted === undefined
      ? last.replace(suggestion, "")
      : `${describe(given)} stands where ${wanted.replace(/ \| undefined$/, "").replaceAll(" | ", " or ")} is wanted.`;
  return { what: what.replaceAll(/PlaceSpec<"[^"]+">/g, "Place"), remedy: meant(last) ?? "Correct it." };
}

const suggestion = / Did you mean (?:to write )?['"]+([^'"]+)['"]+\?$/;

function meant(last: string): string | undefined {
  const name = suggestion.exec(last)?.[1];
  return name === undefined ? undefined : `Did you mean "${name}"?`;
}

function upper(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
