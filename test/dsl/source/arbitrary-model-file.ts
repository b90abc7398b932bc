import fc from "fast-check";
import type { Json } from "../../../packages/dsl/src/source/json-data.ts";

/** How a builder writes his file; every bench in it is written alike. */
export interface Hand {
  readonly lineEnd: "\n" | "\r\n";
  readonly mark: boolean;
  readonly unit: "  " | "    " | "\t";
  /** A bench has a line for each part, or stands on one line. */
  readonly lines: boolean;
  readonly trailingComma: boolean;
  readonly quote: '"' | "'";
  readonly importLines: boolean;
  readonly namespace: boolean;
  /** The first bench is a constant above the model. */
  readonly constant: boolean;
  /** Remarks by the part of a bench that they stand behind. */
  readonly remarks: Readonly<Record<string, string>>;
}

export type BenchData = { readonly [part: string]: Json };

export const arbitraryHand: fc.Arbitrary<Hand> = fc.record({
  lineEnd: fc.constantFrom("\n", "\r\n"),
  mark: fc.boolean(),
  unit: fc.constantFrom("  ", "    ", "\t"),
  lines: fc.boolean(),
  trailingComma: fc.boolean(),
  quote: fc.constantFrom('"', "'"),
  importLines: fc.boolean(),
  namespace: fc.boolean(),
  constant: fc.boolean(),
  remarks: fc.dictionary(
    fc.constantFrom("level", "down"),
    fc.constantFrom("cold", "at 6 V, [not] {sure}", "// twice */", "ü 左"),
  ),
});

const pulse = fc.integer({ min: 9000, max: 21000 }).map((tenths) => tenths / 10);
const angle = fc.integer({ min: -600, max: 600 }).map((tenths) => tenths / 10 + 0);
const stop = fc.oneof(
  pulse,
  fc.record(
    {
      kind: fc.constant("stop"),
      pulse,
      reason: fc.constantFrom("contact", "choice"),
      current: fc.constant(0.8),
    },
    { requiredKeys: ["kind", "pulse", "reason"], noNullPrototype: true },
  ),
);
const deflection = fc.oneof(
  { weight: 4, arbitrary: angle },
  fc.record({ kind: fc.constantFrom("throw", "extension"), mm: angle }, { noNullPrototype: true }),
);
const arbitraryReading: fc.Arbitrary<Json> = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(pulse, deflection) },
  fc.tuple(pulse, deflection, fc.constantFrom("out", "back")),
);
const measured = fc.record(
  { on: fc.constantFrom("2026-03-01", "2025-12-24"), supply: fc.constantFrom(5, 6.6) },
  { requiredKeys: ["on"], noNullPrototype: true },
);

export const arbitraryBench: fc.Arbitrary<BenchData> = fc.record(
  {
    up: stop,
    level: pulse,
    down: stop,
    guard: fc.constantFrom(0, 4, 8.5),
    readings: fc.array(arbitraryReading, { minLength: 1, maxLength: 6 }),
    measured,
  },
  { requiredKeys: ["level", "down"], noNullPrototype: true },
);

/** Another bench that a session could make of it: parts changed and added behind, readings changed, added and taken away. */
export function arbitrarySession(bench: BenchData): fc.Arbitrary<BenchData> {
  const readings = (old: readonly Json[]) =>
    fc
      .tuple(
        fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(undefined) }, arbitraryReading), {
          minLength: old.length,
          maxLength: old.length,
        }),
        fc.array(fc.tuple(fc.nat({ max: old.length }), arbitraryReading), { maxLength: 3 }),
        fc.subarray(old.map((_, index) => index)),
        fc.constantFrom("change", "add", "remove"),
      )
      .map(([changed, added, kept, what]) => {
        if (what === "change") return old.map((reading, index) => changed[index] ?? reading);
        if (what === "remove") return kept.length === 0 ? old : kept.map((index) => old[index] ?? null);
        return added.reduce<readonly Json[]>(
          (list, [index, reading]) => list.toSpliced(index, 0, reading),
          old,
        );
      });
  return arbitraryBench.chain((other) =>
    (Array.isArray(bench.readings) ? readings(bench.readings) : fc.constant(other.readings)).map((list) => {
      const changed: Record<string, Json> = { ...bench };
      // Parts that were not there come behind, as they are added.
      for (const [part, value] of Object.entries(other)) {
        const old = changed[part];
        const whole =
          typeof old === "object" && old !== null && !Array.isArray(old) && typeof value === "object";
        // A part of a part never goes.
        changed[part] = whole ? { ...old, ...value } : value;
      }
      if (list === undefined) delete changed.readings;
      else changed.readings = list;
      return changed;
    }),
  );
}

/** The text of a model with these benches, on channels 1 and up, in one hand; `imported` names are imported beside those it needs. */
export function writeModelFile(
  benches: readonly BenchData[],
  hand: Hand,
  imported: readonly string[] = [],
): { readonly text: string; readonly names: readonly string[] } {
  const { lineEnd, mark, unit, quote, namespace, constant, importLines } = hand;
  const names = new Set(["model", ...imported]);
  const call = (name: string, ...args: readonly string[]) => {
    names.add(name);
    return `${namespace ? "h." : ""}${name}(${args.join(", ")})`;
  };
  const bench = (data: BenchData, depth: number) => writeBench(data, unit.repeat(depth), hand, call);
  const surfaces = benches.map((data, index) => {
    const text = index === 0 && constant ? "bench" : bench(data, 2);
    return `${unit.repeat(2)}s${index}: { servo: { channel: ${index + 1}, bench: ${text} } },`;
  });
  const body = [
    ...(constant && benches[0] !== undefined ? [`const bench = ${bench(benches[0], 0)};`, ""] : []),
    `export default ${call("model", `${quote}Wrenfield${quote}`, "{")}`.slice(0, -1),
    `${unit}surfaces: {`,
    ...surfaces,
    `${unit}},`,
    "});",
    "",
  ];
  const sorted = [...names].sort((a, b) => (a.toLowerCase() < b.toLowerCase() ? -1 : 1));
  const list = importLines
    ? [`import {`, ...sorted.map((name) => `${unit}${name},`), `} from ${quote}@hingeline/dsl${quote};`]
    : [`import { ${sorted.join(", ")} } from ${quote}@hingeline/dsl${quote};`];
  const head = namespace ? [`import * as h from ${quote}@hingeline/dsl${quote};`] : list;
  return { text: (mark ? "\ufeff" : "") + [...head, "", ...body].join(lineEnd), names: sorted };
}

type Call = (name: string, ...args: readonly string[]) => string;

function writeBench(data: BenchData, indent: string, hand: Hand, call: Call): string {
  const { lines, unit, lineEnd, trailingComma, remarks, quote } = hand;
  const entries = Object.entries(data).map(([part, value]) => ({
    part,
    text: writePart(part, value, indent + unit, hand, call),
  }));
  if (!lines) return `{ ${entries.map(({ part, text }) => `${part}: ${text}`).join(", ")} }`;
  const written = entries.map(({ part, text }, index) => {
    const comma = trailingComma || index < entries.length - 1 ? "," : "";
    const remark = remarks[part] === undefined ? "" : ` // ${remarks[part]}`;
    return `${indent}${unit}${part}: ${text}${comma}${remark}`;
  });
  return ["{", ...written, `${indent}}`].join(lineEnd);

  function writePart(part: string, value: Json, at: string, { quote: mark }: Hand, make: Call): string {
    if (part === "readings") {
      const items = (value as readonly Json[]).map((reading) => writeReading(reading));
      if (!lines) return `[${items.join(", ")}]`;
      const body = items.map(
        (item, index) => `${at}${unit}${item}${trailingComma || index < items.length - 1 ? "," : ""}`,
      );
      return ["[", ...body, `${at}]`].join(lineEnd);
    }
    if (part === "measured") {
      const { on, supply } = value as { on: string; supply?: number };
      return `{ on: ${mark}${on}${mark}${supply === undefined ? "" : `, supply: ${make("volts", String(supply))}`} }`;
    }
    if (typeof value === "number") return make("us", String(value));
    const { pulse: at2, reason, current } = value as { pulse: number; reason: string; current?: number };
    const more = current === undefined ? [] : [make("amps", String(current))];
    return make("stopAt", make("us", String(at2)), `${mark}${reason}${mark}`, ...more);
  }

  function writeReading(reading: Json): string {
    const [at, deflected, way] = reading as [number, number | { kind: string; mm: number }, string?];
    const where =
      typeof deflected === "number"
        ? call("deg", String(deflected))
        : call(deflected.kind === "throw" ? "atThrow" : "atExtension", call("mm", String(deflected.mm)));
    return `[${[call("us", String(at)), where, ...(way === undefined ? [] : [`${quote}${way}${quote}`])].join(", ")}]`;
  }
}
