import { type Deg, deg, mm } from "../units/quantity.ts";
import {
  type Drawing,
  type Drive,
  type DriveEnd,
  type DriveRange,
  isLinkageProblem,
  type LinkageProblem,
  type RodStand,
  type Segment,
} from "./drive.ts";
import type { Chain, Linkage, Point } from "./linkage.ts";
import { minus, plus, toPoint, type Vector } from "./vector.ts";

/** Links one after another. `make` makes each link, level where the links before it put it. */
export function chainDrive(
  chain: Chain,
  make: (linkage: Linkage, levelDeg: number) => Drive | LinkageProblem,
  levelDeg = 0,
): Drive | LinkageProblem {
  let whole: Drive | undefined;
  for (const [index, link] of chain.links.entries()) {
    const rotation: Deg = whole === undefined ? deg(levelDeg) : (whole.deflectionAt(deg(levelDeg)) ?? deg(0));
    const next = make(link, rotation);
    if (isLinkageProblem(next)) return { kind: "link", index, problem: next };
    const { low, high } = next.range;
    if (rotation < low.rotation || rotation > high.rotation) {
      return { kind: "linkOutOfReach", index, rotationDeg: rotation };
    }
    whole = whole === undefined ? next : inSeries(whole, next, index);
  }
  return whole ?? { kind: "noLinks" };
}

function inSeries(first: Drive, second: Drive, index: number): Drive {
  const { extension, slackAt } = second;
  const betweenAt = (rotation: Deg) => settle(first.deflectionAt(rotation), second.range);
  /** An answer of the second link, asked for by the first one's rotation. */
  const behind =
    <Answer>(answer: (between: Deg, rotation: Deg) => Answer) =>
    (rotation: Deg): Answer | undefined => {
      const between = betweenAt(rotation);
      return between === undefined ? undefined : answer(between, rotation);
    };
  const backAt = (between: Deg | undefined) =>
    between === undefined ? undefined : rotationAt(first, between);
  return {
    range: {
      low: endOf(first, second, "low"),
      high: endOf(first, second, "high"),
    },
    deflectionAt: behind((between) => second.deflectionAt(between)),
    rotationAt: (deflection) => backAt(second.rotationAt(deflection)),
    rotationsAt: (deflection) => {
      const found = second.rotationsAt(deflection).flatMap((between) => first.rotationsAt(between));
      return found.sort((a, b) => a - b);
    },
    ratioAt: behind((between, rotation) => {
      const [firstRatio, secondRatio] = [first.ratioAt(rotation), second.ratioAt(between)];
      return firstRatio === undefined || secondRatio === undefined ? undefined : firstRatio * secondRatio;
    }),
    rodsAt: behind((between, rotation) =>
      rodsOf(first.rodsAt(rotation), second.rodsAt(between), second.ratioAt(between)),
    ),
    drawingAt: behind((between, rotation) => {
      const [firstDrawing, secondDrawing] = [first.drawingAt(rotation), second.drawingAt(between)];
      if (firstDrawing === undefined || secondDrawing === undefined) return undefined;
      const before = index === 1 ? renamed(firstDrawing, "link1") : firstDrawing;
      return joined(before, renamed(secondDrawing, `link${index + 1}`));
    }),
    ...(slackAt === undefined ? {} : { slackAt: behind(slackAt) }),
    ...(extension === undefined
      ? {}
      : {
          extension: {
            extensionAt: behind(extension.extensionAt),
            rotationAt: (out) => backAt(extension.rotationAt(out)),
          },
        }),
  };
}

/** The rods of both links, those of the first as the surface feels them; undefined where it does not feel one of them. */
function rodsOf(
  first: readonly RodStand[] | undefined,
  second: readonly RodStand[] | undefined,
  ratio: number | undefined,
): readonly RodStand[] | undefined {
  if (first === undefined || second === undefined || ratio === undefined) return undefined;
  // Where the second link turns back the hinge moment does not reach the first link's rods at all.
  if (!first.every((rod) => Number.isFinite(rod.surfaceLever / ratio))) return undefined;
  return [...first.map((rod) => ({ ...rod, surfaceLever: mm(rod.surfaceLever / ratio) })), ...second];
}

/** A drive's rotation for a deflection; one that rounding carried a hair past an end stands at that end. */
function rotationAt(drive: Drive, deflection: Deg): Deg | undefined {
  const { low, high } = drive.range;
  const nearest = [low, high].find((end) => isSame(end.deflection, deflection));
  return drive.rotationAt(deflection) ?? nearest?.rotation;
}

/** A rotation that rounding carried a hair past an end of the next link's range stands at that end. */
function settle(rotation: Deg | undefined, { low, high }: DriveRange): Deg | undefined {
  if (rotation === undefined) return undefined;
  return [low, high].find((end) => isSame(end.rotation, rotation))?.rotation ?? rotation;
}

const isSame = (a: Deg, b: Deg): boolean => Math.abs(a - b) < 1e-9;

/** The end met first: the first link's own, or the one that the second link meets inside the first link's range. */
function endOf(first: Drive, second: Drive, side: "low" | "high"): DriveEnd {
  const own = first.range[side];
  const opposite = first.range[side === "low" ? "high" : "low"];
  const rises = own.deflection > opposite.deflection;
  const met = second.range[rises ? "high" : "low"];
  const rotation = first.rotationAt(met.rotation);
  if (rotation !== undefined) return { rotation, deflection: met.deflection, kind: met.kind };
  return { ...own, deflection: second.deflectionAt(own.deflection) ?? met.deflection };
}

function renamed(drawing: Drawing, link: string): Drawing {
  const name = (point: string) => `${link}.${point}`;
  return {
    points: Object.fromEntries(Object.entries(drawing.points).map(([point, at]) => [name(point), at])),
    segments: drawing.segments.map(
      ({ part, between: [a, b] }): Segment => ({ part, between: [name(a), name(b)] }),
    ),
    from: name(drawing.from),
    to: name(drawing.to),
  };
}

/** The second drawing moved so that its shaft stands where the first one's hinge does. */
function joined(first: Drawing, second: Drawing): Drawing {
  const nowhere: Vector = [0, 0, 0];
  const shift = minus(first.points[first.to] ?? nowhere, second.points[second.from] ?? nowhere);
  const moved = Object.entries(second.points).map(([name, at]): [string, Point] => [
    name,
    toPoint(plus(at, shift)),
  ]);
  return {
    points: { ...first.points, ...Object.fromEntries(moved) },
    segments: [...first.segments, ...second.segments],
    from: first.from,
    to: second.to,
  };
}
