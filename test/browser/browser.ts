import { existsSync, mkdtempSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium } from "playwright-core";

const flags = [
  "--no-sandbox",
  "--headless",
  "--disable-gpu",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
];

/** A browser from the registry; unpacked once into the folder for temporary files, with the libraries it may need. */
export async function startBrowser(): Promise<Browser> {
  const folder = join(tmpdir(), "hingeline-chromium-147.0.0");
  if (!existsSync(folder)) await unpack(folder);
  return chromium.launch({
    executablePath: join(folder, "chromium"),
    args: flags,
    env: {
      ...process.env,
      LD_LIBRARY_PATH: join(folder, "al2023", "lib"),
      FONTCONFIG_PATH: join(folder, "fonts"),
    },
  });
}

/** Into a folder of its own first, then renamed: test files that start at the same time never see half a browser. */
async function unpack(folder: string): Promise<void> {
  const fresh = mkdtempSync(join(tmpdir(), "hingeline-chromium-"));
  const kept = { TMPDIR: process.env.TMPDIR, AWS_LAMBDA_JS_RUNTIME: process.env.AWS_LAMBDA_JS_RUNTIME };
  // The package unpacks where temporary files go, and its libraries only where this name says so.
  process.env.TMPDIR = fresh;
  process.env.AWS_LAMBDA_JS_RUNTIME = "nodejs20.x";
  try {
    const { default: packed } = await import("@sparticuz/chromium");
    packed.setGraphicsMode = false;
    await packed.executablePath();
    renameSync(fresh, folder);
  } catch (error) {
    rmSync(fresh, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  } finally {
    for (const [name, value] of Object.entries(kept))
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
  }
}
