export { pictureNames, pictureToSvg } from "./picture-to-svg.ts";
export type { SheetPage } from "./sheet-pages.ts";
export { type SheetContent, type SheetOptions, sheetPages, sheetToHtml } from "./sheet-to-html.ts";
export { sheetToMarkdown } from "./sheet-to-markdown.ts";
