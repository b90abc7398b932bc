import { turnOf } from "../numeric/sine.ts";
import { cross, dot, length, minus, plus, times, type Vector } from "./vector.ts";

/** A ball that turns about an axis, millimetres: centre of its circle, where it stands at level, a quarter turn on. */
export interface Circle {
  readonly centre: Vector;
  readonly level: Vector;
  readonly quarter: Vector;
  readonly radiusMm: number;
}

/** The circle of a ball about the line through `pivot` along `axis` (any length but zero). */
export function circleOf(pivot: Vector, axis: Vector, ball: Vector): Circle {
  const along = times(axis, 1 / length(axis));
  const centre = plus(pivot, times(along, dot(along, minus(ball, pivot))));
  const level = minus(ball, centre);
  return { centre, level, quarter: cross(along, level), radiusMm: length(level) };
}

/** The point of a circle after a right-handed turn. */
export function pointOn(circle: Circle, turnRad: number): Vector {
  const { cos, sin } = turnOf(turnRad);
  return plus(circle.centre, plus(times(circle.level, cos), times(circle.quarter, sin)));
}

/** From the centre of the horn's circle to that of the arm's. */
export const offsetOf = (arm: Circle, horn: Circle): Vector => minus(arm.centre, horn.centre);
