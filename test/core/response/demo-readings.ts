import type { ServoReading } from "../../../packages/core/src/response/merge-readings.ts";
import fixture from "../../fixtures/demo-readings.json";

/** Standard doubts of the demo readings, in the manner of JCGM 100: instrument, zero, free play; step, jitter, dead band. */
export const demoDoubts = { pulseUs: 1.91, deflectionDeg: 0.264 };

export const demoTables = Object.keys(fixture.tables) as readonly (keyof typeof fixture.tables)[];

/** The readings of one invented bench, in the order in which they were taken. */
export function demoReadings(table: (typeof demoTables)[number]): readonly ServoReading[] {
  return readings(fixture.tables[table]);
}

/** Rows of [pulse us, deflection deg] as readings. */
export function readings(rows: readonly (readonly number[])[]): readonly ServoReading[] {
  return rows.map(([pulseUs = Number.NaN, deflectionDeg = Number.NaN]) => ({ pulseUs, deflectionDeg }));
}
