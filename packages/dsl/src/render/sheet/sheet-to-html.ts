import { type AsBuilt, describeServos, type Model, type SetupPlan } from "@hingeline/core";
import { renderToString } from "preact-render-to-string";
import { visibleText } from "../visible-text.ts";
import { admit } from "./admit.ts";
import { type Element, h, verbatim } from "./element.ts";
import { overviewPage } from "./overview-page.ts";
import type { SheetFacts } from "./page-parts.ts";
import { procedurePage } from "./procedure-page.ts";
import { readBackOf } from "./read-back.ts";
import { servosOnSheet } from "./servo-on-sheet.ts";
import { servoPage } from "./servo-page.ts";
import { pagesOf, type SheetPage } from "./sheet-pages.ts";
import { followScript, sheetScript } from "./sheet-script.ts";
import { sheetStyle } from "./sheet-style.ts";

/** What a sheet shows beside the plan, and how much of it. */
export interface SheetContent {
  /** Only the pages that show one of these surfaces; left out: the whole sheet with its overview and procedure. */
  readonly surfaces?: readonly string[] | undefined;
  /** What was read after the plan was entered: shown with its verdict in place of the blanks. */
  readonly asBuilt?: AsBuilt | undefined;
}

export interface SheetOptions extends SheetContent {
  /** The page reloads when its server says that it was written anew. */
  readonly follow?: boolean;
}

/**
 * The bench sheet of a model and its plan as one self-contained HTML document: nothing is fetched, and the only scripts and styles that
 * may run are its own. It is whole without scripts.
 */
export function sheetToHtml(model: Model, plan: SetupPlan, options: SheetOptions = {}): string {
  const { surfaces, asBuilt, follow = false } = options;
  const readBack = readBackOf(model, plan, asBuilt);
  const sheet: SheetFacts = { model, plan, fingerprint: readBack.verification.revision.ofPlan, readBack };
  const pages = sheetPages(model, plan, surfaces);
  const procedure = surfaces === undefined ? procedurePage(sheet) : undefined;
  const scripts = follow ? [sheetScript, followScript] : [sheetScript];
  const body = h(
    "body",
    {},
    h("a", { class: "skip", href: "#main" }, "Skip to the pages"),
    topOf(sheet, pages, surfaces === undefined, procedure !== undefined),
    h(
      "main",
      { id: "main" },
      surfaces === undefined
        ? overviewPage(
            sheet,
            pages.flatMap(({ servos }) => servos),
          )
        : undefined,
      pages.map((page) => servoPage(page, sheet)),
      procedure,
    ),
    scripts.map((script) => verbatim("script", script)),
  );
  const document = h(
    "html",
    { lang: "en", "data-fingerprint": sheet.fingerprint },
    h(
      "head",
      {},
      h("meta", { charset: "utf-8" }),
      h("meta", { "http-equiv": "Content-Security-Policy", content: policyOf(scripts, follow) }),
      h("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      h("meta", { name: "referrer", content: "no-referrer" }),
      h("title", {}, `${visibleText(plan.model)}: bench sheet`),
      verbatim("style", sheetStyle),
    ),
    body,
  );
  return `<!doctype html>\n${renderToString(document)}\n`;
}

/** The pages that show one of these surfaces; all where none are named. */
export function sheetPages(
  model: Model,
  plan: SetupPlan,
  surfaces?: readonly string[],
): readonly SheetPage[] {
  const pages = pagesOf(model, servosOnSheet(plan, describeServos(model)));
  if (surfaces === undefined) return pages;
  return pages.filter(({ servos }) => servos.some(({ described }) => surfaces.includes(described.surface)));
}

function topOf(
  { plan, fingerprint }: SheetFacts,
  pages: readonly SheetPage[],
  overview: boolean,
  procedure: boolean,
): Element {
  const links: (readonly [string, string])[] = [
    ...(overview ? [["overview", "Overview"] as const] : []),
    ...pages.map(({ key, title }) => [key, visibleText(title)] as const),
    ...(procedure ? [["procedure", "Procedure"] as const] : []),
  ];
  return h(
    "header",
    { class: "top" },
    h("h1", {}, h("bdi", {}, visibleText(plan.model))),
    h("p", {}, `Bench sheet, revision ${fingerprint}`),
    h(
      "nav",
      { "aria-label": "Pages" },
      h(
        "ul",
        {},
        links.map(([id, title]) => h("li", {}, h("a", { href: `#${id}` }, h("bdi", {}, title)))),
      ),
    ),
    h(
      "div",
      { class: "tools" },
      h("label", {}, h("input", { type: "checkbox", id: "big", autocomplete: "off" }), "Big digits"),
      h("button", { type: "button", id: "clear", hidden: true }, "Clear ticks and blanks"),
    ),
  );
}

function policyOf(scripts: readonly string[], follow: boolean): string {
  return [
    "default-src 'none'",
    `script-src ${scripts.map(admit).join(" ")}`,
    `style-src ${admit(sheetStyle)}`,
    ...(follow ? ["connect-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}
