import { compile, us } from "@hingeline/core";
import { doubtAt, standardAt } from "../../packages/core/src/compile/position-doubt.ts";
import { resolveNames } from "../../packages/core/src/compile/resolve-names.ts";
import { rigServos } from "../../packages/core/src/compile/rig-servos.ts";
import { simulatePosition } from "../../packages/core/src/compile/simulate-position.ts";
import { largeModel } from "../support/large-model.ts";
import { measure, type Row } from "./row.ts";

const draws = 1_000_000;

/** A million draws of one setting beside as many look-ups of its response; the doubt in a plan beside all of the plan. */
export async function rows(): Promise<readonly Row[]> {
  const model = largeModel({ surfaces: 12, selectors: 3 });
  const report = () => undefined;
  const rigs = resolveNames(model, report).surfaces.flatMap(
    (named) => rigServos(named, model.radio, model.instruments, report) ?? [],
  );
  const sent = compile(model).channels.flatMap(({ channel, settings }) =>
    rigs
      .filter(({ named }) => named.servo.channel === channel)
      .flatMap((rig) => settings.map(({ enter }) => [rig, enter.pulseUs] as const)),
  );
  const [[rig, pulseUs] = []] = sent;
  const response = rig?.response;
  if (rig === undefined || pulseUs === undefined || response === undefined) throw new Error("no setting");
  const inPlan = await measure(
    {
      // Once for the setting, once to find the least sure of its channel, and the budget of that.
      doubt: () => [
        sent.map(([own, at]) => standardAt(own, at)),
        sent.map(([own, at]) => standardAt(own, at)),
        rigs.map((own) => doubtAt(own, own.openUs[0])),
      ],
      plan: () => compile(model),
    },
    { timeMs: 1000 },
  );
  const took = await measure(
    {
      draw: () => simulatePosition(rig, pulseUs, { seed: 1, draws }),
      lookUp: () => {
        let sum = 0;
        for (let index = 0; index < draws; index++)
          sum += response.deflectionAt(us(pulseUs + (index % 7))) ?? 0;
        return sum;
      },
    },
    { timeMs: 1000 },
  );
  const perSecond = (draws / (took.draw / 1e9) / 1e6).toFixed(1);
  return [
    {
      what: `1e6 draws, ${perSecond}e6 a second`,
      tookNs: took.draw,
      beside: "1e6 looks at a response",
      besideNs: took.lookUp,
      aim: "1 s",
    },
    {
      what: `doubt of ${sent.length} settings`,
      tookNs: inPlan.doubt,
      beside: "compile 12 surfaces",
      besideNs: inPlan.plan,
      aim: "<= 1/10",
    },
  ];
}
