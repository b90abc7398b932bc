import type { AsBuiltLine } from "./as-built-lines.ts";
import { type Element, h, trueMinus } from "./element.ts";

/** What as-built readings say, one paragraph each; undefined where there is nothing. */
export function asBuiltList(lines: readonly AsBuiltLine[]): Element | undefined {
  if (lines.length === 0) return undefined;
  return h(
    "div",
    { class: "findings" },
    lines.map(({ head, text, grave }) =>
      h("p", { class: `finding ${grave ? "error" : "note"}` }, h("b", {}, head), " ", trueMinus(text)),
    ),
  );
}
