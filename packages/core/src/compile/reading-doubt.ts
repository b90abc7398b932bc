import type { Instruments, Surface } from "../model/model.ts";
import { usualInstruments } from "./resolve-bench.ts";

/** Standard doubts (k = 1) of one reading. */
export interface ReadingDoubt {
  readonly pulseUs: number;
  readonly deflectionDeg: number;
}

export function readingDoubt(_surface: Surface, instruments: Instruments | undefined): ReadingDoubt {
  const pulse = instruments?.pulse ?? usualInstruments.pulseUs;
  return { pulseUs: pulse / Math.sqrt(3), deflectionDeg: 0.264 };
}
