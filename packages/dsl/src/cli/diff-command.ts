import { canonicalJson, diffPlans, orderOfEntry, verifyAgain } from "@hingeline/core";
import { loadPlanOrModel } from "../load/load-plan-or-model.ts";
import { diffToText } from "../render/diff-to-text.ts";
import { exitDone, exitFindings } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { refuseStdinTwice, tellFindings, tellProblem, wantsColour } from "./tell.ts";

export interface DiffArgs {
  /** A model or a plan, twice. */
  readonly before: string;
  readonly after: string;
  readonly format: "text" | "json";
  /** Adds the order in which the changes are entered. */
  readonly procedure?: boolean;
  /** Exits with 1 where something differs. */
  readonly exitCode?: boolean;
  /** Reads code files without running them. */
  readonly static?: boolean;
}

/** Prints what differs between two models or plans, and what has to be verified again because of it. */
export async function diffCommand(args: DiffArgs, io: Io): Promise<number> {
  const names = [args.before, args.after] as const;
  const twice = refuseStdinTwice(...names, io);
  if (twice !== undefined) return twice;
  const [before, after] = [await load(names[0], args, io), await load(names[1], args, io)];
  if (typeof before === "number") return before;
  if (typeof after === "number") return after;
  const changes = diffPlans(before, after);
  const procedure = args.procedure === true ? orderOfEntry(after, before) : undefined;
  const told = { changes, verify: verifyAgain(changes, after), ...(procedure && { procedure }) };
  io.stdout.write(
    args.format === "json"
      ? `${canonicalJson(told)}\n`
      : diffToText({ names, before, after, ...told }, { colour: wantsColour(io.stdout, io) }),
  );
  return args.exitCode === true && changes.length > 0 ? exitFindings : exitDone;
}

async function load(path: string, { static: isStatic = false }: DiffArgs, io: Io) {
  const loaded = await loadPlanOrModel(path, io, { runs: !isStatic });
  if ("problem" in loaded) return tellProblem(loaded.problem, io);
  return "findings" in loaded ? tellFindings(path, loaded.findings, io) : loaded.plan;
}
