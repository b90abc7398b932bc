import { execFileSync } from "node:child_process";
import { measure, type Row } from "./row.ts";

const node = (...args: readonly string[]) => execFileSync(process.execPath, args);

/** A whole run of the command line on the built packages, beside a node that does nothing. */
export async function rows(): Promise<readonly Row[]> {
  const bin = "packages/dsl/bin/hingeline.mjs";
  const silent = "test/fixtures/load/wrenfield.ts";
  const told = "packages/examples/src/bramblehook.ts";
  const took = await measure(
    {
      bare: () => node("-e", "0"),
      help: () => node(bin, "--help"),
      silent: () => node(bin, "plan", silent),
      told: () => node(bin, "plan", told),
    },
    { timeMs: 2000 },
  );
  return [
    {
      what: "plan without findings, cold",
      tookNs: took.silent,
      beside: "node -e 0",
      besideNs: took.bare,
      aim: "<= 3",
    },
    { what: "plan that points at lines", tookNs: took.told, beside: "node -e 0", besideNs: took.bare },
    { what: "hingeline --help, cold", tookNs: took.help, beside: "node -e 0", besideNs: took.bare },
  ];
}
