import type { Address } from "@hingeline/core";
import type { HingelineNames } from "./hingeline-names.ts";
import { isObject, type Json } from "./json-data.ts";
import { writeNumber } from "./write-number.ts";

/** How what is written looks in the file that it goes into. */
export interface Style {
  readonly names: HingelineNames;
  readonly quote: '"' | "'";
  /** Where lists have lines of their own: how deep, and how lines end. */
  readonly lines?: {
    readonly indent: string;
    readonly unit: string;
    readonly lineEnd: string;
    readonly trailingComma: boolean;
  };
}

/**
 * Part of a bench as an expression, with the unit's function about each number; undefined where it is not known how to write it.
 * @param inside the address within the bench: `["readings", 2, 0]`
 */
export function writeValue(value: Json, inside: Address, style: Style): string | undefined {
  const [first, ...rest] = inside;
  switch (first) {
    case "level":
    case "guard":
      return rest.length === 0 ? quantity("us", value, style) : undefined;
    case "freeCurrent":
      return rest.length === 0 ? quantity("amps", value, style) : undefined;
    case "up":
    case "down":
      return rest.length === 0 ? writeStop(value, style) : writeStopPart(value, rest, style);
    case "readings":
      return writeReadings(value, rest, style);
    case "measured":
      return writeMeasured(value, rest, style);
    default:
      return undefined;
  }
}

/** A text as a literal between the quotes that the file uses. */
export function writeText(value: string, quote: string): string {
  const escaped = JSON.stringify(value).slice(1, -1).replaceAll('\\"', '"');
  return quote + escaped.replaceAll(quote, `\\${quote}`).replaceAll("${", "\\${") + quote;
}

function quantity(unit: string, value: Json | undefined, { names }: Style): string | undefined {
  if (typeof value !== "number") return undefined;
  if (!names.used) return writeNumber(value);
  const call = names.call(unit);
  return call === undefined ? undefined : `${call}(${writeNumber(value)})`;
}

function writeStop(value: Json, style: Style): string | undefined {
  if (!isObject(value)) return quantity("us", value, style);
  const { kind, pulse, reason, current, ...others } = value;
  if (kind !== "stop" || typeof reason !== "string" || Object.keys(others).length > 0) return undefined;
  const values = [
    quantity("us", pulse, style),
    writeText(reason, style.quote),
    ...(current === undefined ? [] : [quantity("amps", current, style)]),
  ];
  const names = ["pulse", "reason", "current"];
  return writeCall("stopAt", "stop", names, values, style);
}

function writeStopPart(value: Json, [part, ...rest]: Address, style: Style): string | undefined {
  if (rest.length > 0) return undefined;
  if (part === "pulse") return quantity("us", value, style);
  if (part === "current") return quantity("amps", value, style);
  return part === "reason" && typeof value === "string" ? writeText(value, style.quote) : undefined;
}

function writeReadings(value: Json, [index, part, ...rest]: Address, style: Style): string | undefined {
  if (index === undefined) {
    if (!Array.isArray(value)) return undefined;
    const readings = value.map((reading: Json) => writeReading(reading, style));
    return readings.includes(undefined) ? undefined : writeList(readings, style);
  }
  if (part === undefined) return writeReading(value, style);
  if (part === 0) return quantity("us", value, style);
  if (part === 1) return rest.length === 0 ? writeDeflection(value, style) : quantity("mm", value, style);
  return typeof value === "string" ? writeText(value, style.quote) : undefined;
}

function writeReading(value: Json, style: Style): string | undefined {
  if (!Array.isArray(value)) return undefined;
  const [pulse, at, way] = value as readonly Json[];
  const parts = [
    quantity("us", pulse, style),
    writeDeflection(at, style),
    ...(typeof way === "string" ? [writeText(way, style.quote)] : []),
  ];
  return parts.includes(undefined) ? undefined : `[${parts.join(", ")}]`;
}

function writeDeflection(value: Json | undefined, style: Style): string | undefined {
  if (!isObject(value)) return quantity("deg", value, style);
  const { kind, mm } = value;
  if (kind !== "throw" && kind !== "extension") return undefined;
  const call = kind === "throw" ? "atThrow" : "atExtension";
  return writeCall(call, kind, ["mm"], [quantity("mm", mm, style)], style);
}

function writeMeasured(value: Json, [part]: Address, style: Style): string | undefined {
  if (part === undefined) {
    if (!isObject(value)) return undefined;
    const parts = Object.entries(value).map(([key, one]) => {
      const written = writeMeasured(one, [key], style);
      return written === undefined ? undefined : `${key}: ${written}`;
    });
    return parts.includes(undefined) ? undefined : `{ ${parts.join(", ")} }`;
  }
  if (part === "supply") return quantity("volts", value, style);
  if (part === "temperature") return quantity("celsius", value, style);
  return part === "on" && typeof value === "string" ? writeText(value, style.quote) : undefined;
}

/** A call of `name`, or the object of that kind that it makes where the file calls nothing of hingeline. */
function writeCall(
  name: string,
  kind: string,
  parts: readonly string[],
  values: readonly (string | undefined)[],
  { names, quote }: Style,
): string | undefined {
  if (values.includes(undefined)) return undefined;
  if (!names.used) {
    const entries = values.map((value, index) => `${parts[index]}: ${value}`);
    return `{ ${[`kind: ${writeText(kind, quote)}`, ...entries].join(", ")} }`;
  }
  const call = names.call(name);
  return call === undefined ? undefined : `${call}(${values.join(", ")})`;
}

function writeList(items: readonly (string | undefined)[], { lines }: Style): string {
  if (lines === undefined || items.length === 0) return `[${items.join(", ")}]`;
  const { indent, unit, lineEnd, trailingComma } = lines;
  const inner = items.map((item) => `${lineEnd}${indent}${unit}${item}`).join(",");
  return `[${inner}${trailingComma ? "," : ""}${lineEnd}${indent}]`;
}
