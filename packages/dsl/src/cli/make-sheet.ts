import { type AsBuilt, compile, type Model, nearestName, type SetupPlan } from "@hingeline/core";
import { loadAsBuilt } from "../load/load-as-built.ts";
import { loadModel } from "../load/load-model.ts";
import { pictureNames, pictureToSvg } from "../render/sheet/picture-to-svg.ts";
import { sheetPages, sheetToHtml } from "../render/sheet/sheet-to-html.ts";
import { sheetToMarkdown } from "../render/sheet/sheet-to-markdown.ts";
import type { Io } from "./io.ts";
import { refuseStdinTwice, tellFindings, tellProblem, tellUnusable } from "./tell.ts";

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
  /** A file of as-built readings (JSON), "-" for standard input: what was read, with its verdict, in place of the blanks. */
  readonly asBuilt?: string;
  /** File to write instead of standard output. */
  readonly out?: string;
  /** Serves the page on this computer and makes it anew on every save. */
  readonly watch?: boolean;
}

/** A sheet as text with the plan that it shows; or the exit code where there is none, after the reason was told. */
export type MadeSheet = { readonly plan: SetupPlan; readonly text: string } | { readonly exitCode: number };

/** Reads the model and draws what the arguments ask for. */
export async function makeSheet(args: SheetArgs, io: Io, follow = false): Promise<MadeSheet> {
  const twice = refuseStdinTwice(args.model, args.asBuilt, io);
  if (twice !== undefined) return { exitCode: twice };
  const loaded = await loadModel(args.model, io, { runs: args.static !== true });
  if ("problem" in loaded) return { exitCode: tellProblem(loaded.problem, io) };
  if ("findings" in loaded) return { exitCode: await tellFindings(args.model, loaded.findings, io) };
  const { model } = loaded;
  const plan = compile(model);
  const read = args.asBuilt === undefined ? { asBuilt: undefined } : await loadAsBuilt(args.asBuilt, io);
  if ("problem" in read) return { exitCode: tellUnusable(read.problem.message, io) };
  const drawn = drawSheet(model, plan, { ...args, follow, asBuilt: read.asBuilt });
  return "problem" in drawn ? { exitCode: tellUnusable(drawn.problem, io) } : { plan, text: drawn.text };
}

interface Wanted extends Pick<SheetArgs, "surface" | "pair" | "picture" | "format"> {
  readonly asBuilt?: AsBuilt | undefined;
  readonly follow: boolean;
}

function drawSheet(
  model: Model,
  plan: SetupPlan,
  { picture, format, asBuilt, follow, ...args }: Wanted,
): { readonly text: string } | { readonly problem: string } {
  if (picture !== undefined) {
    const text = pictureToSvg(model, plan, picture);
    return text === undefined
      ? { problem: unknown("picture", picture, pictureNames(model, plan)) }
      : { text };
  }
  const chosen = chooseSurfaces(model, plan, args);
  if ("problem" in chosen) return chosen;
  const content = { surfaces: chosen.surfaces, asBuilt };
  return {
    text:
      format === "markdown"
        ? sheetToMarkdown(model, plan, content)
        : sheetToHtml(model, plan, { ...content, follow }),
  };
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

/** "There is no pair "flap". Did you mean "flaps"? There is ailerons, elevator, flaps." */
function unknown(what: string, name: string, known: readonly string[]): string {
  const nearest = nearestName(name, known);
  const meant = nearest === undefined ? "" : `Did you mean "${nearest}"? `;
  return `There is no ${what} "${name}". ${meant}There is ${known.length === 0 ? "none" : known.join(", ")}.`;
}
