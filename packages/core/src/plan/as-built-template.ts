import type { AsBuilt, AsBuiltChannel, AsBuiltSetting } from "./as-built.ts";
import { fingerprintOf } from "./fingerprint.ts";
import type { PlanChannel, Setting, SetupPlan } from "./setup-plan.ts";

/** An as-built document of this plan to fill in by hand: everything that can be measured stands there and reads "not measured". */
export function asBuiltTemplate(plan: SetupPlan): AsBuilt {
  return {
    format: "hingeline/as-built",
    version: 1,
    model: plan.model,
    plan: fingerprintOf(plan),
    by: "",
    checkedBy: "",
    date: "",
    channels: plan.channels.map(blankChannel),
  };
}

function blankChannel({ channel, settings, labels }: PlanChannel): AsBuiltChannel {
  const blank = "not measured";
  return {
    channel,
    ...(labels === undefined
      ? {}
      : { labels: Object.fromEntries(Object.keys(labels).map((servo) => [servo, ""])) }),
    limitLowUs: blank,
    limitHighUs: blank,
    sweptLowUs: blank,
    sweptHighUs: blank,
    neutralUs: blank,
    failsafeUs: blank,
    powerUpUs: blank,
    settings: settings.map(blankSetting),
  };
}

function blankSetting({ control, detent, stick, when, surface, gives }: Setting): AsBuiltSetting {
  return {
    control,
    ...(detent === undefined ? {} : { detent }),
    ...(stick === undefined ? {} : { stick }),
    ...(when === undefined ? {} : { when }),
    surface,
    pulseUs: "not measured",
    ...(gives === undefined ? {} : { deflectionDeg: "not measured" }),
  };
}
