import type { Model } from "@hingeline/core";
import type { SheetServo } from "./servo-on-sheet.ts";

/** What stands together on one printed page: one servo or two. */
export interface SheetPage {
  /** Unique on the sheet; letters, digits and hyphens only. */
  readonly key: string;
  /** A group's name, the names of two surfaces, or one. */
  readonly title: string;
  readonly servos: readonly SheetServo[];
}

/**
 * Servos by pages: the servos of one surface together, then surfaces of one group, then left and right by their names; never more
 * than two to a page.
 */
export function pagesOf({ groups = {} }: Model, servos: readonly SheetServo[]): readonly SheetPage[] {
  const left = [...servos];
  const pages: SheetPage[] = [];
  for (let first = left.shift(); first !== undefined; first = left.shift()) {
    const { surface } = first.described;
    const partner =
      left.find(({ described }) => described.surface === surface) ??
      left.find(({ described }) => sides(described.surface) === sides(surface)) ??
      left.find(({ described }) => groupOf(groups, surface, described.surface) !== undefined);
    if (partner !== undefined) left.splice(left.indexOf(partner), 1);
    const together = partner === undefined ? [first] : [first, partner];
    pages.push({ key: `page-${pages.length + 1}`, title: titleOf(groups, together), servos: together });
  }
  return pages;
}

function titleOf(groups: NonNullable<Model["groups"]>, servos: readonly SheetServo[]): string {
  const [first, second] = servos.map(({ described }) => described.surface);
  if (first === undefined) return "";
  if (second === undefined || second === first) return first;
  return groupOf(groups, first, second) ?? `${first} and ${second}`;
}

/** The smallest group that holds both. */
function groupOf(groups: NonNullable<Model["groups"]>, one: string, other: string): string | undefined {
  const [smallest] = Object.entries(groups)
    .filter(([, { surfaces }]) => surfaces.includes(one) && surfaces.includes(other))
    .sort(([, a], [, b]) => a.surfaces.length - b.surfaces.length);
  return smallest?.[0];
}

/** A name without the word that tells its side: equal for a left and a right surface; unlike any other where there is none. */
function sides(name: string): string {
  const side = /left|right|port|starboard|(?<=[a-z_-])[LR]$/gi;
  return side.test(name)
    ? name.replaceAll(/left|right|port|starboard|(?<=[a-z_-])[LR]$/gi, "*")
    : `= ${name}`;
}
