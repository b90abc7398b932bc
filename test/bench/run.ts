import * as coldStart from "./cold-start.bench.ts";
import * as compile from "./compile.bench.ts";
import * as conversions from "./conversions.bench.ts";
import * as doubt from "./doubt.bench.ts";
import * as linkage from "./linkage.bench.ts";
import type { Row } from "./row.ts";
import * as sheet from "./sheet.bench.ts";

const groups: Readonly<Record<string, () => Promise<readonly Row[]>>> = {
  conversions: conversions.rows,
  linkage: linkage.rows,
  compile: compile.rows,
  doubt: doubt.rows,
  sheet: sheet.rows,
  "cold-start": coldStart.rows,
};

const wanted = process.argv.slice(2);
const columns = [28, 10, 26, 10, 9, 14] as const;
print(["what", "took", "beside", "took", "ratio", "aim"]);
for (const [name, rows] of Object.entries(groups)) {
  if (wanted.length > 0 && !wanted.some((word) => name.startsWith(word))) continue;
  for (const { what, tookNs, beside, besideNs, aim = "" } of await rows())
    print([what, time(tookNs), beside, time(besideNs), (tookNs / besideNs).toPrecision(3), aim]);
}

function print(cells: readonly string[]): void {
  console.log(
    cells
      .map((cell, index) =>
        index % 2 === 1 || index === 4
          ? cell.padStart(columns[index] ?? 0)
          : cell.padEnd(columns[index] ?? 0),
      )
      .join(" ")
      .trimEnd(),
  );
}

function time(ns: number): string {
  const [divisor, unit] = ns < 1e3 ? [1, "ns"] : ns < 1e6 ? [1e3, "us"] : [1e6, "ms"];
  return `${(ns / divisor).toPrecision(3)} ${unit}`;
}
