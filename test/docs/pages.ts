import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";

export const root = resolve(import.meta.dirname, "../..");

/** A page that strangers read. */
export interface Page {
  /** From the root. */
  readonly path: string;
  readonly text: string;
}

/** A fenced block of a page, and the remark on the line before it. */
export interface Block {
  readonly page: string;
  readonly language: string;
  readonly code: string;
  /** What stands in the comment just before the block: `<!-- run -->`. */
  readonly remark: string | undefined;
}

/** Every page: those at the root, of docs/, and of the packages. */
export function allPages(): readonly Page[] {
  const inFolder = (folder: string) =>
    readdirSync(join(root, folder))
      .filter((name) => name.endsWith(".md"))
      .map((name) => join(folder, name));
  const own = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "SECURITY.md"];
  const packages = readdirSync(join(root, "packages")).flatMap((name) => inFolder(join("packages", name)));
  return [...own, ...inFolder("docs"), ...packages].map(pageAt);
}

export function pageAt(path: string): Page {
  return { path, text: readFileSync(join(root, path), "utf8") };
}

export function blocksOf({ path, text }: Page): readonly Block[] {
  const fences = text.matchAll(/(?:^<!-- ([^\n]*?) -->\n)?^```(\w+)[^\n]*\n([\s\S]*?)^```$/gm);
  return [...fences].map(([, remark, language = "", code = ""]) => ({ page: path, language, code, remark }));
}

/** The file that a block is, which its first line names: `// packages/core/src/linkage/gear-pair.ts`. */
export function fileOf({ code }: Block): string | undefined {
  return /^\/\/ (\S+\.ts)\n/.exec(code)?.[1];
}

/** Where the links of a page go, web addresses apart: the file from the root, and the heading in it. */
export function linksOf({
  path,
  text,
}: Page): readonly { readonly file: string; readonly heading: string }[] {
  return [...text.replaceAll(/^```[\s\S]*?^```$/gm, "").matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target = ""]) => target)
    .filter((target) => !target.includes("://"))
    .map((target) => {
      const [file = "", heading = ""] = target.split("#");
      return { file: file === "" ? path : relative(root, join(root, dirname(path), file)), heading };
    });
}

/** What a forge makes of a heading. */
export function anchorOf(heading: string): string {
  return heading
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}\s-]/gu, "")
    .trim()
    .replaceAll(/\s/g, "-");
}
