import type { PlanInTheMaking } from "../plan/setup-plan.ts";
import { findUnsafeSums } from "./order-of-entry.ts";
import type { Output } from "./output.ts";
import type { Report } from "./report.ts";

/** On a radio whose limits do not cut, entered values that add up to more than is safe are refused; nothing would hold them. */
export function refuseUnsafeSums(plan: PlanInTheMaking, outputs: readonly Output[], report: Report): void {
  for (const { channel, reachUs } of findUnsafeSums(plan)) {
    const output = outputs.find((one) => one.channel === channel);
    if (output === undefined) continue;
    const low = reachUs[0] < output.safeUs[0];
    report("sum-unsafe", ["surfaces", output.motion.name], {
      surface: output.motion.name,
      channel,
      reachUs: reachUs[low ? 0 : 1],
      safeUs: output.safeUs[low ? 0 : 1],
    });
  }
}
