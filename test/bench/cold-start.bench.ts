import { execFileSync } from "node:child_process";
import { measure, type Row } from "./row.ts";

const node = (...args: readonly string[]) => execFileSync(process.execPath, args);

/** A whole run of the command line on the built packages, beside a node that does nothing. */
export async function rows(): Promise<readonly Row[]> {
  const bin = "packages/dsl/bin/hingeline.mjs";
  const model = "packages/examples/src/bramblehook.ts";
  const took = await measure(
    {
      bare: () => node("-e", "0"),
      help: () => node(bin, "--help"),
      plan: () => node(bin, "plan", model),
    },
    { timeMs: 2000 },
  );
  return [
    {
      what: "hingeline plan MODEL, cold",
      tookNs: took.plan,
      beside: "node -e 0",
      besideNs: took.bare,
      aim: "<= 3",
    },
    { what: "hingeline --help, cold", tookNs: took.help, beside: "node -e 0", besideNs: took.bare },
  ];
}
