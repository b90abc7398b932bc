import { asinOf } from "./arc.ts";

/** Degrees -> radians. */
export const radians = (angleDeg: number): number => (angleDeg * Math.PI) / 180;
/** Radians -> degrees. */
export const degrees = (angleRad: number): number => (angleRad * 180) / Math.PI;
/** The angle of a sine from 0 to 1, degrees; a sine past 1 by a rounding error counts as 1. */
export const angleOfSine = (sine: number): number => degrees(asinOf(Math.min(1, sine)));
