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

/** Facts that can be, but seldom are: plausible sizes, and labels that tell servos apart. */
export function checkFacts(surfaces: readonly NamedSurface[], report: Report): void {
  const labels = new Map<string, NamedServo>();
  for (const { name, surface, servos } of surfaces) {
    checkSizes(["surfaces", name], name, { chord: surface.chord, span: surface.span }, report);
    for (const named of servos) {
      const { torque, speed, deadBand } = named.servo.type ?? {};
      checkSizes([...named.address, "type"], named.id, { torque, speed, deadBand }, report);
      checkLabel(named, labels, report);
    }
  }
}

function checkSizes(
  at: readonly (string | number)[],
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
