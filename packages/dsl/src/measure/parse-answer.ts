import type { StopReason } from "@hingeline/core";
import { findPlainNumber, numberPattern } from "./plain-number.ts";

/** What a builder typed, by its form alone; whether it fits the question is for the session. */
export type Answer =
  /** Nothing: what stands there stays. */
  | { readonly kind: "keep" }
  | { readonly kind: "word"; readonly word: Word }
  | { readonly kind: "go"; readonly servo: string }
  | { readonly kind: "drop"; readonly pulseUs: number }
  | {
      readonly kind: "pulse";
      readonly pulseUs: number;
      readonly reason?: StopReason;
      readonly currentA?: number;
    }
  | {
      readonly kind: "reading";
      readonly pulseUs: number;
      /** Degrees, or millimetres of throw or extension. */
      readonly at: { readonly deg: number } | { readonly mm: number };
      readonly way?: Way;
    }
  | { readonly kind: "record"; readonly on?: string; readonly supplyV?: number; readonly celsius?: number };

export type Way = "out" | "back";
export type Word = (typeof words)[number];

const words = ["yes", "out", "back", "clear", "done", "skip", "undo", "end"] as const;
const reasons: readonly StopReason[] = ["contact", "deadCentre", "structure", "servo", "signal", "choice"];

const parts = {
  amps: new RegExp(`^(${numberPattern})A$`, "i"),
  volts: new RegExp(`^(${numberPattern})V$`, "i"),
  celsius: new RegExp(`^(${numberPattern})C$`, "i"),
  deflection: new RegExp(`^(${numberPattern})(deg|mm)?$`, "i"),
  date: /^\d{4}-\d{2}-\d{2}$/,
};

/** Pulses and deflections that a model takes. */
const pulsesUs = [100, 5000] as const;
const mostDeg = 120;

/** The answer that a line stands for, or a sentence for why it is none. */
export function parseAnswer(line: string): Answer | { readonly problem: string } {
  const [first = "", ...rest] = line
    .trim()
    .replaceAll(/[,;]/g, " ")
    // A unit may stand apart from its number.
    .replaceAll(/(?<=[\d.]) +(us|deg|mm|A|V|C)\b/gi, "$1")
    .split(/\s+/);
  if (first === "") return { kind: "keep" };
  const name = first.toLowerCase();
  const word = words.find((one) => one === name);
  if (word !== undefined && rest.length === 0) return { kind: "word", word };
  if (name === "go") return parseGo(rest);
  if (name === "drop") return parseDrop(rest);
  if (parts.date.test(first) || parts.volts.test(first) || parts.celsius.test(first))
    return parseRecord([first, ...rest]);
  const pulseUs = parsePulse(first);
  if (pulseUs === undefined)
    return { problem: `"${first}" is neither a pulse from 100 to 5000 us nor one of the words.` };
  return parseReading(pulseUs, rest) ?? parseStop(pulseUs, rest);
}

function parseGo([servo, ...rest]: readonly string[]): Answer | { readonly problem: string } {
  return servo === undefined || rest.length > 0
    ? { problem: "Say which servo: go flapLeft." }
    : { kind: "go", servo };
}

function parseDrop([pulse = "", ...rest]: readonly string[]): Answer | { readonly problem: string } {
  const pulseUs = parsePulse(pulse);
  return pulseUs === undefined || rest.length > 0
    ? { problem: "Say the pulse of the reading to drop: drop 1535." }
    : { kind: "drop", pulseUs };
}

function parsePulse(text: string): number | undefined {
  const plain = text.replace(/us$/i, "");
  const pulseUs = findPlainNumber(plain) ?? Number.NaN;
  return pulseUs >= pulsesUs[0] && pulseUs <= pulsesUs[1] ? pulseUs : undefined;
}

function parseReading(
  pulseUs: number,
  [deflection = "", side, ...rest]: readonly string[],
): Answer | { readonly problem: string } | undefined {
  const [, digits, unit = "deg"] = parts.deflection.exec(deflection) ?? [];
  if (digits === undefined) return undefined;
  const value = Number(digits);
  const way = side?.toLowerCase();
  if (rest.length > 0 || (way !== undefined && way !== "out" && way !== "back"))
    return { problem: "A reading is a pulse and a deflection, and the way if it is another: 1765 8.6 back." };
  const isDegrees = unit.toLowerCase() === "deg";
  if (isDegrees && Math.abs(value) > mostDeg)
    return { problem: `${value} deg is no deflection; they go from -${mostDeg} to ${mostDeg} deg.` };
  return {
    kind: "reading",
    pulseUs,
    at: isDegrees ? { deg: value } : { mm: value },
    ...(way === undefined ? {} : { way }),
  };
}

function parseStop(pulseUs: number, rest: readonly string[]): Answer | { readonly problem: string } {
  let reason: StopReason | undefined;
  let currentA: number | undefined;
  for (const part of rest) {
    const [, amps] = parts.amps.exec(part) ?? [];
    const named = reasons.find((one) => one.toLowerCase() === part.toLowerCase());
    if (amps !== undefined && currentA === undefined && Number(amps) >= 0) currentA = Number(amps);
    else if (named !== undefined && reason === undefined) reason = named;
    else return { problem: `"${part}" is no reason; there is ${reasons.join(", ")}.` };
  }
  return {
    kind: "pulse",
    pulseUs,
    ...(reason === undefined ? {} : { reason }),
    ...(currentA === undefined ? {} : { currentA }),
  };
}

function parseRecord(texts: readonly string[]): Answer | { readonly problem: string } {
  let record: Extract<Answer, { kind: "record" }> = { kind: "record" };
  for (const text of texts) {
    const [, volts] = parts.volts.exec(text) ?? [];
    const [, celsius] = parts.celsius.exec(text) ?? [];
    if (volts !== undefined && Number(volts) > 0) record = { ...record, supplyV: Number(volts) };
    else if (celsius !== undefined) record = { ...record, celsius: Number(celsius) };
    else if (parts.date.test(text) && isDate(text)) record = { ...record, on: text };
    else return { problem: `"${text}" is no date, voltage or temperature, such as 2026-05-02 6.0V 21C.` };
  }
  return record;
}

function isDate(text: string): boolean {
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}
