import { formatNumber, type PlanGang } from "@hingeline/core";
import { alignTable } from "./align-table.ts";
import { signed } from "./numbers.ts";
import { visibleText } from "./visible-text.ts";
import { hang } from "./wrap-text.ts";

/** The servos of one surface: which pulses belong together, and how far they pull apart in between. */
export function gangLines({ surface, servos, points, worstDeg }: PlanGang, columns: number): string[] {
  const apart = `${formatNumber(worstDeg, 2)} deg at most between entered pulses`;
  return [
    ...hang("  ", `${visibleText(surface)}: the servos pull apart by ${apart}`, columns),
    ...servos.flatMap((servo, index) => hang(`  servo ${index + 1}  `, visibleText(servo), columns)),
    ...alignTable(
      "Together",
      points.map(({ deflectionDeg }) => `at ${signed(deflectionDeg, 1)} deg`),
      servos.map((_, index) => ({
        head: `servo ${index + 1}`,
        unit: "us",
        cells: points.map(({ pulsesUs }) => {
          const pulseUs = pulsesUs[index];
          return pulseUs === undefined ? "-" : formatNumber(pulseUs, 1);
        }),
      })),
      columns,
    ),
  ];
}
