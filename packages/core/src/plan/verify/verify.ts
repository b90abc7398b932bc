import type { AsBuilt } from "../as-built.ts";
import { fingerprintOf, revisionOf } from "../fingerprint.ts";
import type { SetupPlan } from "../setup-plan.ts";
import { findCauses, revisionCause } from "./find-causes.ts";
import { findStrays } from "./find-strays.ts";
import { judgeChannel, usualTesterUs } from "./judge-lines.ts";
import { judgeMatches } from "./judge-matches.ts";
import type { DeflectionAt } from "./observed.ts";
import type { Verification } from "./verification.ts";

/** What is known beside plan and as-built. */
export interface VerifyOptions {
  /** The measured responses, where they are at hand: with them a deflection is held against a wrong pulse too, and an arm against its teeth. */
  readonly deflectionAt?: DeflectionAt;
}

/**
 * As-built readings against their plan. A pulse agrees within half a step of the radio and 1 us; a deflection within twice the combined
 * standard doubt of prediction and reading; two sides within their group's tolerance, guarded by the doubt. What was not measured
 * says so. Never throws for what a builder can get wrong.
 */
export function verify(
  plan: SetupPlan,
  asBuilt: AsBuilt,
  { deflectionAt }: VerifyOptions = {},
): Verification {
  const fingerprint = fingerprintOf(plan);
  const same = fingerprint.startsWith(asBuilt.plan);
  const lines = plan.channels.flatMap((channel) => judgeChannel(channel, plan, asBuilt));
  const verdicts = [...lines, ...judgeMatches(plan, lines, asBuilt)];
  const strays = findStrays(plan, asBuilt);
  const extraUs = Math.max(0, (asBuilt.instruments?.pulseUs ?? usualTesterUs) - usualTesterUs);
  const outcomes = new Set(verdicts.map(({ outcome }) => outcome));
  const isMeasured = outcomes.has("agrees") || outcomes.has("cannotTell");
  return {
    revision: { ofPlan: revisionOf(fingerprint), measured: revisionOf(asBuilt.plan), same },
    verdicts,
    causes: [
      ...(same ? [] : [revisionCause(plan.channels.map(({ channel }) => channel))]),
      ...findCauses(plan, verdicts, { deflectionAt, extraUs }),
    ],
    strays,
    passed: same && strays.length === 0 && isMeasured && !outcomes.has("differs"),
  };
}
