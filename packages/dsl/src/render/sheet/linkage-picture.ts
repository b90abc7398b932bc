import type { LinkageStand } from "@hingeline/core";
import { formatNumber } from "@hingeline/core";
import { visibleText } from "../visible-text.ts";
import { type Element, h } from "./element.ts";
import { drawStand, surfaceEnd, type View, viewsOf } from "./linkage-views.ts";
import { fontSize, label, type Place, picture, shortName, stroke, units } from "./plot-parts.ts";
import { degreesText, type SheetServo, shortSetting } from "./servo-on-sheet.ts";

/** A rod nearer than this to dead centre is marked. (common practice, no source) */
const nearDeg = 15;
/** Over one another; what lies between the ends is thinned out where there is more. */
const most = 4;
const drawingWidth = 222;
const wordsAt = 242;
/** Enough to be seen at 18 millimetres on paper. */
const leastHeight = 80;

interface Stand {
  readonly name: string;
  readonly deflectionDeg: number;
  readonly stand: LinkageStand;
}

/**
 * A linkage at what is entered, every position over the others, drawn to scale from the port tip; below it from above where it does not
 * lie in one plane. Beside it each position's deflection and how far its rods are from dead centre, with a line to its surface.
 */
export function linkagePicture(servo: SheetServo): Element | undefined {
  const stands = standsOf(servo);
  const views = viewsOf(
    stands.map(({ stand }) => stand),
    drawingWidth,
    80,
  );
  const [side] = views;
  if (side === undefined) return undefined;
  const ends = stands.map((stand) => endOf(stand, side)[1]);
  // Room for the surfaces where they reach out of what is drawn to scale.
  const lift = Math.max(0, 4 - Math.min(...ends));
  const drop = Math.max(0, Math.max(...ends) + 4 - side.height);
  const drawn = views.reduce((sum, { height }) => sum + height, lift + drop);
  const words = stands.map(({ name: at, deflectionDeg, stand }) => [
    `${shortName(at, 11)}: ${degreesText(deflectionDeg)}`,
    ...stand.rods.map(deadCentreText),
  ]);
  const lines = words.flat().length;
  const name = visibleText(servo.described.id);
  return picture(
    `linkage-${servo.key}`,
    Math.max(drawn, lines * fontSize, leastHeight) + 4,
    { title: `Linkage of ${name}`, text: stands.map(standText).join(" ") },
    [...drawViews(views, stands, lift, drop), ...rows(words, stands, side, lift)],
  );
}

/** How the linkage stands at the settings that differ, by rising deflection, both ends among them. */
function standsOf({ described, settings }: SheetServo): Stand[] {
  const stands = settings
    .flatMap((setting): Stand[] => {
      const deflectionDeg = setting.gives?.deflectionDeg;
      const stand = deflectionDeg === undefined ? undefined : described.linkage?.standAt(deflectionDeg);
      return deflectionDeg === undefined || stand === undefined
        ? []
        : [{ name: shortSetting(setting), deflectionDeg, stand }];
    })
    .toSorted((a, b) => a.deflectionDeg - b.deflectionDeg);
  const apart = stands.filter(
    ({ deflectionDeg }, index) =>
      deflectionDeg - (stands[index - 1]?.deflectionDeg ?? Number.NEGATIVE_INFINITY) > 0.05,
  );
  if (apart.length <= most) return apart;
  const kept = Array.from({ length: most }, (_, index) =>
    Math.round((index * (apart.length - 1)) / (most - 1)),
  );
  return apart.filter((_, index) => kept.includes(index));
}

function drawViews(views: readonly View[], stands: readonly Stand[], lift: number, drop: number): Element[] {
  let top = lift;
  return views.map((view) => {
    const group = h(
      "g",
      { transform: `translate(0 ${units(top)})` },
      ...stands.map(({ stand, deflectionDeg }, index) =>
        drawStand(view, stand, deflectionDeg, index > 0 && index < stands.length - 1),
      ),
    );
    top += view.height + drop;
    return group;
  });
}

/** The words of every position, from its surface on a dotted line. */
function rows(
  words: readonly (readonly string[])[],
  stands: readonly Stand[],
  side: View,
  lift: number,
): Element[] {
  let line = 0;
  return stands.flatMap((stand, index) => {
    const [x, y] = endOf(stand, side);
    const texts = words[index] ?? [];
    const top = line * fontSize;
    line += texts.length;
    return [
      stroke(
        [
          [x, y + lift],
          [wordsAt - 12, top + 9],
          [wordsAt - 4, top + 9],
        ],
        { "stroke-dasharray": "1 3" },
      ),
      ...texts.map((text, row) => label(wordsAt + (row === 0 ? 0 : 8), top + (row + 1) * fontSize, text)),
    ];
  });
}

function endOf({ stand: { drawing }, deflectionDeg }: Stand, { place }: View): Place {
  const hinge = drawing.points[drawing.to];
  return surfaceEnd(hinge === undefined ? [0, 0] : place(hinge), deflectionDeg);
}

/** "arm 64°, horn 23°" with a "!" where one is near: how far a rod is from dead centre. */
function deadCentreText({ armDeg, hornDeg }: LinkageStand["rods"][number]): string {
  const text = (at: string, angleDeg: number) =>
    `${at} ${formatNumber(angleDeg, 0)}°${angleDeg < nearDeg ? " !" : ""}`;
  return `${text("arm", armDeg)}, ${text("horn", hornDeg)}`;
}

function standText({ name, deflectionDeg, stand }: Stand): string {
  const angles = stand.rods.map(
    ({ armDeg, hornDeg }) =>
      `the rod stands ${formatNumber(armDeg, 0)}° from dead centre at the arm and ${formatNumber(hornDeg, 0)}° at the horn${Math.min(armDeg, hornDeg) < nearDeg ? ", which is near" : ""}`,
  );
  return `${visibleText(name)}, ${degreesText(deflectionDeg)}${angles.length === 0 ? "" : `: ${angles.join("; ")}`}.`;
}
