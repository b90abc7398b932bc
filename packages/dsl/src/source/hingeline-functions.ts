import {
  amps,
  ballRodFromRule,
  celsius,
  deg,
  degPerS,
  degPerUs,
  fromFoot,
  fromInch,
  fromKgfCm,
  fromKmPerH,
  fromKnots,
  fromMph,
  fromOunce,
  fromOzfIn,
  fromRad,
  fromSecondsPer60Deg,
  grams,
  m,
  mm,
  mps,
  newtons,
  nm,
  pct,
  s,
  toFoot,
  toInch,
  toKgfCm,
  toKmPerH,
  toKnots,
  toMph,
  toOunce,
  toOzfIn,
  toRad,
  toSecondsPer60Deg,
  us,
  volts,
} from "@hingeline/core";
import type { ts } from "ts-morph";
import { selector, stick } from "../declare/controls.ts";
import { matched, together } from "../declare/groups.ts";
import { ballRod, bentRod, cables, chain, pushrod, torqueRod, track } from "../declare/linkages.ts";
import { model } from "../declare/model.ts";
import { per } from "../declare/per.ts";
import { atExtension, atPart, atPulse, atThrow, stopAt } from "../declare/places.ts";
import type { Traced, TracedObject } from "./traced.ts";

/** A function that a model file may call: the real one, and which argument each part of its result comes from. */
export interface HingelineFunction {
  readonly run: (...args: never[]) => unknown;
  /** Undefined where the result is computed. Values in it do not count, places do. */
  readonly origin: (args: readonly Traced[], call: ts.Node) => Traced | undefined;
}

const itself: HingelineFunction["origin"] = ([value]) => value;
const nowhere: HingelineFunction["origin"] = () => undefined;

/** Arguments one by one under these names. */
const fields =
  (...names: readonly string[]): HingelineFunction["origin"] =>
  (args, node) =>
    object(
      node,
      names.map((name, index) => [name, args[index]]),
    );

/** The parts of one argument. */
const partsOf =
  (index: number): HingelineFunction["origin"] =>
  (args, node) => {
    const spec = args[index];
    return spec?.kind === "object" ? { ...spec, node } : undefined;
  };

/** All arguments as a list under this name. */
const list =
  (name: string): HingelineFunction["origin"] =>
  (items, node) =>
    object(node, [[name, { kind: "list", node, items, literal: undefined, open: [] }]]);

const units = { amps, celsius, deg, degPerS, degPerUs, grams, m, mm, mps, newtons, nm, pct, s, us, volts };
const computing = {
  ballRodFromRule,
  fromFoot,
  fromInch,
  fromKgfCm,
  fromKmPerH,
  fromKnots,
  fromMph,
  fromOunce,
  fromOzfIn,
  fromRad,
  fromSecondsPer60Deg,
  toFoot,
  toInch,
  toKgfCm,
  toKmPerH,
  toKnots,
  toMph,
  toOunce,
  toOzfIn,
  toRad,
  toSecondsPer60Deg,
};
const linkages = { ballRod, bentRod, cables, pushrod, torqueRod, track };

/** What "@hingeline/dsl" exports that declares, by name. */
export const hingelineFunctions: ReadonlyMap<string, HingelineFunction> = new Map([
  ...each(units, itself),
  ...each(computing, nowhere),
  ...each(linkages, partsOf(0)),
  ...each({ stick }, partsOf(0)),
  ...each({ selector }, list("detents")),
  ...each({ chain }, list("links")),
  ...each({ together }, fields("surfaces")),
  ...each({ matched }, ([surfaces, options], node) =>
    object(node, [["surfaces", surfaces], ...(options?.kind === "object" ? options.parts : [])]),
  ),
  ...each({ per }, fields("per", "cases")),
  ...each({ atThrow, atExtension }, fields("mm")),
  ...each({ atPulse }, fields("us")),
  ...each({ atPart }, fields("part")),
  ...each({ stopAt }, fields("pulse", "reason", "current")),
  ...each({ model }, ([name, spec], node) =>
    spec?.kind === "object"
      ? {
          ...spec,
          node,
          parts: new Map([...(name === undefined ? [] : [["name", name] as const]), ...spec.parts]),
        }
      : undefined,
  ),
]);

function each(
  functions: Readonly<Record<string, HingelineFunction["run"]>>,
  origin: HingelineFunction["origin"],
): [string, HingelineFunction][] {
  return Object.entries(functions).map(([name, run]) => [name, { run, origin }]);
}

function object(node: ts.Node, entries: readonly (readonly [string, Traced | undefined])[]): TracedObject {
  const parts = new Map<string, Traced>();
  for (const [key, part] of entries) if (part !== undefined) parts.set(key, part);
  return { kind: "object", node, parts, literal: undefined, open: [] };
}
