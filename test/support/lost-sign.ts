import { type AsBuilt, asBuiltTemplate, type SetupPlan } from "@hingeline/core";

/**
 * As-built readings of the tow plane's left flap: level and tow as the plan has them, the takeoff flap entered with its sign lost,
 * nothing else measured.
 */
export function lostSign(plan: SetupPlan): AsBuilt {
  const template = asBuiltTemplate(plan);
  const settings = plan.channels.find(({ channel }) => channel === 5)?.settings ?? [];
  return {
    ...template,
    by: "A. Fitter",
    channels: template.channels.map((one) => ({
      ...one,
      settings: (one.settings ?? []).map((read) => {
        const planned = settings.find(({ detent }) => detent === read.detent);
        if (one.channel !== 5 || planned === undefined || read.detent === "landing") return read;
        if (read.detent === "takeoff") return { ...read, pulseUs: 1300 };
        return {
          ...read,
          pulseUs: planned.enter.pulseUs,
          deflectionDeg: Number(planned.gives?.deflectionDeg.toFixed(1)),
        };
      }),
    })),
  };
}
