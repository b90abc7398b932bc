import { hypotOf } from "../numeric/hypotenuse.ts";
import { cosOf, sinOf } from "../numeric/sine.ts";
import { type Mm, mm } from "../units/quantity.ts";
import type { Point } from "./linkage.ts";

/** Aft, to starboard, up; any unit. */
export type Vector = readonly [number, number, number];

/** To starboard: the way an axis points across the flight. */
export const toStarboard: Vector = [0, 1, 0];

/** The sum of two vectors. */
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
/** From the second vector to the first. */
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
/** A vector made longer by a factor; turned round by a negative one. */
export const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k];
/** The scalar product: 0 for vectors square to each other. */
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
/** The length, never negative. */
export const length = (a: Vector): number => hypotOf(a[0], a[1], a[2]);
/** The vector product: square to both, right-handed. */
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** A vector of millimetres as a branded point. */
export const toPoint = (v: Vector): Point => [mm(v[0]), mm(v[1]), mm(v[2])] as [Mm, Mm, Mm];

/** The point of the view from the port tip at `lengthMm` from the origin, at `angleRad` from aft through up. */
export const inView = (lengthMm: number, angleRad: number): Vector => [
  lengthMm * cosOf(angleRad),
  0,
  lengthMm * sinOf(angleRad),
];
