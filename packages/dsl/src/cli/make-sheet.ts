import { compile, type Model, type SetupPlan } from "@hingeline/core";
import { loadModel } from "../load/load-model.ts";
import { pictureNames, pictureToSvg } from "../render/sheet/picture-to-svg.ts";
import { sheetPages, sheetToHtml } from "../render/sheet/sheet-to-html.ts";
import { sheetToMarkdown } from "../render/sheet/sheet-to-markdown.ts";
import { frameFindings } from "./frame-findings.ts";
import type { Io } from "./io.ts";
import { tellFindings, tellProblem, tellUnusable } from "./tell.ts";

export interface SheetArgs {
  readonly model: string;
  /** Reads a code file without running it. */
  readonly static?: boolean;
  readonly format: "html" | "markdown";
  /** Only the pages that show these surfaces. */
  readonly surface?: readonly string[];
  /** Only the page of this name, or of this group. */
  readonly pair?: string;
  /** One picture alone, as SVG. */
  readonly picture?: string;
  /** File to write instead of standard output. */
  readonly out?: string;
  /** Serves the page on this computer and makes it anew on every save. */
  readonly watch?: boolean;
}

/** A sheet as text with the plan that it shows; or the exit code where there is none, after the reason was told. */
export type MadeSheet = { readonly plan: SetupPlan; readonly text: string } | { readonly exitCode: number };

/** Reads the model and draws what the arguments ask for. */
export async function makeSheet(args: SheetArgs, io: Io, follow = false): Promise<MadeSheet> {
  const loaded = await loadModel(args.model, io, { runs: args.static !== true });
  if ("problem" in loaded) return { exitCode: tellProblem(loaded.problem, io) };
  if ("findings" in loaded) {
    const frames = await frameFindings(args.model, loaded.findings, io);
    return { exitCode: tellFindings(loaded.findings, io, frames) };
  }
  const { model } = loaded;
  const plan = compile(model);
  const drawn = drawSheet(model, plan, args, follow);
  return "problem" in drawn ? { exitCode: tellUnusable(drawn.problem, io) } : { plan, text: drawn.text };
}

function drawSheet(
  model: Model,
  plan: SetupPlan,
  { picture, format, ...args }: SheetArgs,
  follow: boolean,
): { readonly text: string } | { readonly problem: string } {
  if (picture !== undefined) {
    const text = pictureToSvg(model, plan, picture);
    return text === undefined
      ? { problem: unknown("picture", picture, pictureNames(model, plan)) }
      : { text };
  }
  const chosen = chooseSurfaces(model, plan, args);
  if ("problem" in chosen) return chosen;
  const { surfaces } = chosen;
  if (format === "markdown") return { text: sheetToMarkdown(model, plan, surfaces) };
  return { text: sheetToHtml(model, plan, { follow, ...(surfaces === undefined ? {} : { surfaces }) }) };
}

/** The surfaces that `--surface` and `--pair` name; undefined for the whole sheet. */
function chooseSurfaces(
  model: Model,
  plan: SetupPlan,
  { surface = [], pair }: Pick<SheetArgs, "surface" | "pair">,
): { readonly surfaces: readonly string[] | undefined } | { readonly problem: string } {
  const pages = sheetPages(model, plan);
  const known = Object.keys(model.surfaces);
  const stranger = surface.find((name) => !known.includes(name));
  if (stranger !== undefined) return { problem: unknown("surface", stranger, known) };
  if (pair === undefined) return { surfaces: surface.length === 0 ? undefined : surface };
  const page = pages.find(({ title }) => title === pair);
  const members = page?.servos.map(({ described }) => described.surface) ?? model.groups?.[pair]?.surfaces;
  if (members === undefined) {
    const names = [...new Set([...pages.map(({ title }) => title), ...Object.keys(model.groups ?? {})])];
    return { problem: unknown("pair", pair, names) };
  }
  return { surfaces: [...surface, ...members] };
}

function unknown(what: string, name: string, known: readonly string[]): string {
  return `There is no ${what} "${name}"; there is ${known.length === 0 ? "none" : known.join(", ")}.`;
}
