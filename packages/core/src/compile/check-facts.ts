import type { Address } from "../address/address.ts";
import type { Model, Surface } from "../model/model.ts";
import { LEAST_FRACTION } from "../surface/hinge-moment.ts";
import type { Report } from "./report.ts";
import type { NamedServo, NamedSurface } from "./resolve-names.ts";

/** What is usual, from experience, no source: outside it a unit or a decimal point is likely wrong. */
const usual = {
  chord: { unit: "mm", low: 8, high: 400 },
  span: { unit: "mm", low: 30, high: 3000 },
  torque: { unit: "N m", low: 0.02, high: 8 },
  speed: { unit: "deg/s", low: 60, high: 2000 },
  deadBand: { unit: "us", low: 0, high: 15 },
} as const;

/** Facts that cannot be, or seldom are: what contradicts itself, sizes that are not plausible, and labels that do not tell servos apart. */
export function checkFacts(
  surfaces: readonly NamedSurface[],
  temperatures: Model["temperatures"],
  report: Report,
): void {
  const labels = new Map<string, NamedServo>();
  // A model may be flown at one temperature only; in the other ranges nothing would be left.
  if (temperatures !== undefined && temperatures[0] !== temperatures[1])
    checkRange(["temperatures"], "The temperature of flight", temperatures, "deg C", report);
  for (const { name, surface, servos } of surfaces) {
    const at = ["surfaces", name];
    checkSizes(at, name, { chord: surface.chord, span: surface.span }, report);
    checkSection(at, name, surface, report);
    checkRange([...at, "allowed"], `What is allowed of ${name}`, surface.allowed, "deg", report);
    for (const named of servos) {
      const { torque, speed, deadBand, accepts } = named.servo.type ?? {};
      const typeAt = [...named.address, "type"];
      checkSizes(typeAt, named.id, { torque, speed, deadBand }, report);
      checkRange([...typeAt, "accepts"], `What ${named.id} accepts`, accepts, "us", report);
      checkBore(named, report);
      checkLabel(named, labels, report);
    }
  }
}

function checkRange(
  at: Address,
  what: string,
  range: readonly [number, number] | undefined,
  unit: string,
  report: Report,
): void {
  if (range === undefined || range[0] < range[1]) return;
  report("range-reversed", at, { what, first: range[0], second: range[1], unit });
}

/** Outside these the load of the air cannot be told from chord and section. */
function checkSection(at: Address, name: string, { chord, section }: Surface, report: Report): void {
  if (chord === undefined || section === undefined) return;
  if (section < chord)
    report("section-short", [...at, "section"], { surface: name, sectionMm: section, chordMm: chord });
  else if (chord / section < LEAST_FRACTION)
    report("implausible", [...at, "section"], {
      what: `section of ${name}`,
      value: section,
      unit: "mm",
      low: chord,
      high: chord / LEAST_FRACTION,
    });
}

function checkBore({ id, address, servo: { rod } }: NamedServo, report: Report): void {
  if (rod?.bore === undefined || rod.bore < rod.diameter) return;
  report("bore-wide", [...address, "rod", "bore"], {
    servo: id,
    boreMm: rod.bore,
    diameterMm: rod.diameter,
  });
}

function checkSizes(
  at: Address,
  of: string,
  sizes: { readonly [Name in keyof typeof usual]?: number | undefined },
  report: Report,
): void {
  for (const name of Object.keys(usual) as (keyof typeof usual)[]) {
    const value = sizes[name];
    const { unit, low, high } = usual[name];
    if (value !== undefined && (value < low || value > high))
      report("implausible", [...at, name], { what: `${name} of ${of}`, value, unit, low, high });
  }
}

function checkLabel(named: NamedServo, labels: Map<string, NamedServo>, report: Report): void {
  const { label } = named.servo;
  if (label === undefined) return;
  const first = labels.get(label);
  if (first === undefined) labels.set(label, named);
  else report("label-twice", [...named.address, "label"], { label, first: first.id, second: named.id });
}
