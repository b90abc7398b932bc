import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { compile, describeServos, type Model, us } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import corvane from "@hingeline/examples/corvane";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sheetPages, sheetToHtml } from "../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import { hostileModel, hostileNames } from "../support/hostile-model.ts";
import linked from "../support/linked-model.ts";
import { lostSign } from "../support/lost-sign.ts";
import { startBrowser } from "./browser.ts";

const examples: Readonly<Record<string, Model>> = { bramblehook, ostrevale, slatewing, corvane, linked };
const all = { ...examples, hostile: hostileModel };
const url = "http://sheet.test/";
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
/** Inside margins of 9 millimetres, CSS pixels. */
const papers = { A4: { width: 726, height: 1054 }, Letter: { width: 748, height: 988 } } as const;

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

interface Opened {
  readonly page: Page;
  /** Whatever the page asked for beside itself, and what its console said. */
  readonly strays: string[];
}

async function open(html: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const strays: string[] = [];
  page.on("console", (message) => strays.push(message.text()));
  page.on("pageerror", (error) => strays.push(error.message));
  page.on("dialog", (dialog) => strays.push(dialog.message()));
  await context.route("**", (route) => {
    if (route.request().url() === url) return route.fulfill({ body: html, contentType: "text/html" });
    strays.push(route.request().url());
    return route.abort();
  });
  await page.goto(url);
  return { page, strays };
}

/** Texts of the tables to enter that reach out of their cells on paper. */
async function crossings(
  surfaces: readonly string[],
  model: Model,
  viewport: { readonly width: number; readonly height: number },
): Promise<readonly string[]> {
  const { page } = await open(sheetOf(model, surfaces), { viewport });
  await page.emulateMedia({ media: "print" });
  const found = await page.evaluate<string[]>(
    `[...document.querySelectorAll(".enter tbody :is(td,th):not([scope=col])")].filter((cell) => {
      const range = document.createRange();
      range.selectNodeContents(cell);
      const [text, frame] = [range.getBoundingClientRect(), cell.getBoundingClientRect()];
      return text.width > 0 && (text.left < frame.left - 0.5 || text.right > frame.right + 0.5);
    }).map((cell) => cell.innerText)`,
  );
  await page.context().close();
  return found;
}

const sheetOf = (model: Model, surfaces?: readonly string[]) =>
  sheetToHtml(model, compile(model), surfaces === undefined ? {} : { surfaces });

describe.each(Object.entries(all))("the sheet of %s", (_, model) => {
  test.each([
    ["light", 1280],
    ["dark", 390],
  ] as const)("gives axe nothing to find (%s, %i px)", async (colorScheme, width) => {
    const { page } = await open(sheetOf(model), { colorScheme, viewport: { width, height: 900 } });
    await page.evaluate(axe);
    const found = await page.evaluate<string[]>(
      "axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ': ' + html)))",
    );
    await page.context().close();
    expect(found).toEqual([]);
  });

  test("asks for nothing beside itself and breaks no rule of its own policy", async () => {
    const { page, strays } = await open(sheetOf(model));
    expect(await page.locator("main .page.one").count()).toBeGreaterThan(0);
    await page.context().close();
    expect(strays).toEqual([]);
  });

  // 640 pixels is a window of 1280 at 200 % zoom.
  test.each([1280, 640, 390, 320])("is no wider than a window of %i px", async (width) => {
    const { page } = await open(sheetOf(model), { viewport: { width, height: 800 } });
    const wide = await page.evaluate<number>("document.documentElement.scrollWidth");
    await page.context().close();
    expect(wide).toBeLessThanOrEqual(width);
  });
});

describe.each(Object.entries(examples))("the sheet of %s", (_, model) => {
  test.each(Object.entries(papers))(
    "prints each pair of servos whole on one page of %s",
    async (format, viewport) => {
      for (const { servos, title } of sheetPages(model, compile(model))) {
        const surfaces = servos.map(({ described }) => described.surface);
        const { page } = await open(sheetOf(model, surfaces), { viewport });
        const pdf = await page.pdf({ format });
        await page.emulateMedia({ media: "print" });
        const [full, shown] = await page.evaluate<[number, number]>(
          "(({ scrollHeight, clientHeight }) => [scrollHeight, clientHeight])(document.querySelector('.one'))",
        );
        const printed = await page.evaluate<string>("document.querySelector('.one').innerText");
        await page.context().close();
        expect(pdf.toString("latin1").match(/\/Type \/Page\b(?!s)/g), title).toHaveLength(1);
        expect(full, title).toBeLessThanOrEqual(shown + 1);
        expect(printed).toContain("ENTER %");
        expect(await crossings(surfaces, model, viewport), title).toEqual([]);
      }
    },
  );
});

test("a page that may go on over several has its head laid out as browsers repeat it on each", async () => {
  const { page } = await open(sheetOf(ostrevale));
  await page.emulateMedia({ media: "print" });
  const shown = await page.evaluate<string[]>(
    "[...document.querySelectorAll('.page:is(:not(.one),.flows)>header')].map((one) => getComputedStyle(one)).map(({ display, breakInside }) => display + ', ' + breakInside)",
  );
  const text = await page.locator("#procedure>header").textContent();
  await page.context().close();
  expect(new Set(shown)).toEqual(new Set(["table-header-group, avoid"]));
  expect(shown.length).toBeGreaterThan(1);
  expect(text).toMatch(/Ostrevale.*revision [0-9a-f]{8}/s);
});

test("the channels of the overview stand one below the other in a narrow window, nothing cut", async () => {
  for (const model of [bramblehook, slatewing]) {
    const { page } = await open(sheetOf(model), { viewport: { width: 390, height: 800 } });
    const [inner, outer] = await page.evaluate<[number, number]>(
      "(({ scrollWidth, clientWidth }) => [scrollWidth, clientWidth])(document.querySelector('#overview .scroll'))",
    );
    const limit = await page.evaluate<string>(
      "getComputedStyle(document.querySelector('#overview td[data-head]'), '::before').content",
    );
    await page.context().close();
    expect(inner).toBe(outer);
    expect(limit).toBe('"low limit"');
  }
});

describe.each(Object.entries(examples))("the pictures of %s", (_, model) => {
  test.each(Object.values(papers))("are at least 18 mm high on a page of %o", async (viewport) => {
    const { page } = await open(sheetOf(model), { viewport });
    await page.emulateMedia({ media: "print" });
    const heights = await page.evaluate<number[]>(
      "[...document.querySelectorAll('.pictures figure:not(.screen) svg')].map((one) => one.getBoundingClientRect().height)",
    );
    await page.context().close();
    expect(Math.min(...heights)).toBeGreaterThan((18 / 25.4) * 96);
  });
});

describe("the slider", () => {
  test.each(["bramblehook", "ostrevale", "linked"])(
    "of %s agrees with the compiled response to 0.1 us",
    async (name) => {
      const model = examples[name] as Model;
      const plan = compile(model);
      const { page } = await open(sheetOf(model));
      const servos = new Map(describeServos(model).map((one) => [one.id, one]));
      let compared = 0;
      for (const panel of await page.locator("[data-slide]").all()) {
        const input = panel.locator("input");
        const [low, high] = [
          Number(await input.getAttribute("min")),
          Number(await input.getAttribute("max")),
        ];
        for (let step = 0; step < 20; step++) {
          const deflectionDeg = Number((low + ((high - low) * (step + 0.5)) / 20).toFixed(1));
          await input.fill(String(deflectionDeg));
          for (const text of await panel.locator("output").allInnerTexts()) {
            const [, id = "", pulse, percent] = /^(.*): \S+° +(\S+) µs +(\S+) %/.exec(text) ?? [];
            const response = servos.get(id)?.measured?.response;
            if (pulse === undefined) {
              expect(text).toContain("not measured");
              continue;
            }
            const expected = response?.pulseAt(deflectionDeg as never) ?? Number.NaN;
            expect(Math.abs(Number(pulse) - expected)).toBeLessThan(0.1);
            const { centreUs, per100Us } = plan.radio;
            const exact = ((expected - centreUs) * 100) / (per100Us as number);
            expect(Math.abs(Number(percent?.replace("−", "-")) - exact)).toBeLessThan(0.06);
            expect(response?.deflectionAt(us(Number(pulse)))).toBeCloseTo(deflectionDeg, 1);
            compared++;
          }
        }
      }
      await page.context().close();
      expect(compared).toBeGreaterThan(60);
    },
  );

  test("says the share that would be typed where limits scale, and nothing outside them", async () => {
    const plan = compile(slatewing);
    const { page } = await open(sheetOf(slatewing));
    const channels = new Map(plan.channels.map((one) => [one.servos[0], one]));
    let compared = 0;
    for (const panel of await page.locator("[data-slide]").all()) {
      for (const end of ["min", "max"] as const) {
        await panel.locator("input").fill((await panel.locator("input").getAttribute(end)) ?? "");
        for (const text of await panel.locator("output").allInnerTexts()) expect(text).not.toContain("%");
      }
      await panel.locator("input").fill("5");
      for (const text of await panel.locator("output").allInnerTexts()) {
        const [, id = "", pulse, share] = /^(.*): \S+° +(\S+) µs +(\S+) share$/.exec(text) ?? [];
        const [low = NaN, high = NaN] = Object.values(channels.get(id)?.limits ?? {}).map(
          (one) => one.pulseUs,
        );
        const expected = -100 + (200 * (Number(pulse) - low)) / (high - low);
        expect(Math.abs(Number(share?.replace("−", "-")) - expected)).toBeLessThan(0.06);
        compared++;
      }
    }
    await page.context().close();
    expect(compared).toBeGreaterThan(0);
  });

  test("moves by keyboard, with the circle in the plot and the linkage", async () => {
    const { page } = await open(sheetOf(linked, ["flapLeft"]));
    const input = page.locator("[data-slide] input");
    const end = () => page.locator("[data-linkage] line").first().getAttribute("x2");
    const before = await end();
    await input.focus();
    for (let press = 0; press < 30; press++) await page.keyboard.press("ArrowRight");
    expect(Number(await input.inputValue())).toBeCloseTo(3, 6);
    expect(await end()).not.toBe(before);
    const mark = page.locator("[data-plot] [data-mark]").first();
    expect(await mark.getAttribute("visibility")).toBe("visible");
    expect(await input.getAttribute("aria-valuetext")).toBe("+3.0 degrees");
    await page.context().close();
  });
});

describe("with scripts off", () => {
  test("the page is whole: values, pictures and big digits, but no slider", async () => {
    const { page } = await open(sheetOf(bramblehook), { javaScriptEnabled: false });
    expect(await page.locator(".slide:visible").count()).toBe(0);
    expect(await page.locator("table.enter:visible").count()).toBe(5);
    const [picture, digits] = [page.locator(".pictures svg").first(), page.locator("td.value").first()];
    expect(await picture.isVisible()).toBe(true);
    const before = (await digits.boundingBox())?.height ?? 0;
    await page.locator("#big").check();
    expect(await picture.isVisible()).toBe(false);
    expect((await digits.boundingBox())?.height).toBeGreaterThan(1.8 * before);
    await page.context().close();
  });
});

test("ticks and blanks are kept in the browser, for this revision only", async () => {
  const { page } = await open(sheetOf(bramblehook));
  await page.getByLabel("motor safe").first().check();
  await page.getByLabel("Pulse read at low limit, aileronLeft").fill("1219");
  await page.reload();
  expect(await page.getByLabel("motor safe").first().isChecked()).toBe(true);
  expect(await page.getByLabel("Pulse read at low limit, aileronLeft").inputValue()).toBe("1219");
  const answers = [false, true];
  page.on("dialog", (dialog) => (answers.shift() ? dialog.accept() : dialog.dismiss()));
  const clear = page.getByRole("button", { name: "Clear ticks and blanks" });
  await clear.click();
  expect(await page.getByLabel("motor safe").first().isChecked()).toBe(true);
  await clear.click();
  await page.reload();
  expect(await page.getByLabel("motor safe").first().isChecked()).toBe(false);
  expect(await page.getByLabel("Pulse read at low limit, aileronLeft").inputValue()).toBe("");
  await page.getByLabel("motor safe").first().check();
  const other = sheetOf({ ...bramblehook, name: "Bramblehook 27" });
  await page.route(url, (route) => route.fulfill({ body: other, contentType: "text/html" }));
  await page.reload();
  expect(await page.getByLabel("motor safe").first().isChecked()).toBe(false);
  await page.context().close();
});

test("as-built readings stay on the one page of their pair, and axe finds nothing in them", async () => {
  const plan = compile(bramblehook);
  const html = sheetToHtml(bramblehook, plan, { surfaces: ["flapLeft"], asBuilt: lostSign(plan) });
  const { page, strays } = await open(html, { viewport: { width: 390, height: 800 } });
  await page.evaluate(axe);
  expect(await page.evaluate("axe.run().then(({ violations }) => violations.map(({ id }) => id))")).toEqual(
    [],
  );
  expect(await page.evaluate<number>("document.documentElement.scrollWidth")).toBeLessThanOrEqual(390);
  for (const format of Object.keys(papers)) {
    const pdf = await page.pdf({ format });
    expect(pdf.toString("latin1").match(/\/Type \/Page\b(?!s)/g), format).toHaveLength(1);
  }
  await page.context().close();
  expect(strays).toEqual([]);
});

test("names too long for one page go on over the next and lose nothing", async () => {
  const { page } = await open(sheetOf(hostileModel), { viewport: papers.A4 });
  await page.emulateMedia({ media: "print" });
  const cut = await page.evaluate<number>(
    "[...document.querySelectorAll('.one')].filter((one) => getComputedStyle(one).overflow === 'hidden' && one.scrollHeight > one.clientHeight + 1).length",
  );
  const wide = await page.evaluate<number>("document.documentElement.scrollWidth");
  await page.context().close();
  expect([cut, wide]).toEqual([0, papers.A4.width]);
});

test("names with markup, quotes or turned writing stay text", async () => {
  const { page, strays } = await open(sheetOf(hostileModel));
  expect(await page.evaluate("window.hurt")).toBeUndefined();
  expect(await page.evaluate("document.scripts.length")).toBe(1);
  expect(await page.locator("main :is(b, img, script)").filter({ hasText: "leftFlap" }).count()).toBe(0);
  expect(await page.locator("h1").textContent()).toBe(hostileNames.model);
  const text = await page.evaluate<string>("document.body.textContent");
  for (const name of [hostileNames.left, hostileNames.hebrew, hostileNames.long, hostileNames.detent])
    expect(text).toContain(name);
  expect(text).not.toContain("\u202E");
  await page.context().close();
  expect(strays).toEqual([]);
});
