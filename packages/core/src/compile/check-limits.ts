import type { Radio } from "../model/model.ts";
import { toPulse } from "../signal/percent.ts";
import { pct } from "../units/quantity.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/** Limits that the radio does not take, because they are too near to its centre or beyond it. */
export function checkLimits(outputs: readonly Output[], radio: Radio, report: Report): void {
  const { leastLimit } = radio;
  if (leastLimit === undefined) return;
  for (const { grid, members } of outputs) {
    const ends = [
      { end: "low", ...grid.limits.low, leastPercent: -leastLimit },
      { end: "high", ...grid.limits.high, leastPercent: leastLimit },
    ];
    for (const { end, percent, pulseUs, leastPercent } of ends)
      if (Math.sign(leastPercent) * (percent - leastPercent) < 0)
        report("limit-too-tight", [...members[0].rig.named.address, "bench"], {
          end,
          percent,
          pulseUs,
          leastPercent: leastLimit,
          leastUs: toPulse(radio, pct(leastPercent)),
        });
  }
}
