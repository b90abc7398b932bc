import { fromInch, pct, type SignalScale, toPulse, us } from "@hingeline/core";
import convert from "convert-units";
import { unit } from "mathjs";
import { inputs, measure, over, type Row } from "./row.ts";

const scale: SignalScale = {
  name: "bench",
  centre: us(1500),
  per100: us(500),
  reach: pct(150),
  step: pct(1),
};

/** Typed conversions beside the same arithmetic bare, and beside two general-purpose unit libraries. */
export async function rows(): Promise<readonly Row[]> {
  const percents = inputs(-100, 100);
  const lengths = inputs(1, 40);
  const took = await measure(
    {
      pulse: over(percents, (percent) => toPulse(scale, pct(percent))),
      barePulse: over(percents, (percent) => 1500 + percent * 5),
      inch: over(lengths, fromInch),
      bareInch: over(lengths, (inches) => inches * 25.4),
      convertUnits: over(lengths, (inches) => convert(inches).from("in").to("mm")),
      mathjs: over(lengths, (inches) => unit(inches, "inch").toNumber("mm")),
    },
    { calls: percents.length },
  );
  return [
    {
      what: "percent -> pulse, typed",
      tookNs: took.pulse,
      beside: "1500 + 5 percent",
      besideNs: took.barePulse,
    },
    { what: "inch -> mm, typed", tookNs: took.inch, beside: "25.4 inches", besideNs: took.bareInch },
    { what: "inch -> mm, typed", tookNs: took.inch, beside: "convert-units", besideNs: took.convertUnits },
    { what: "inch -> mm, typed", tookNs: took.inch, beside: "mathjs units", besideNs: took.mathjs },
  ];
}
