import { compile } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import { test } from "vitest";
import { sheetToHtml } from "../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import linked from "../support/linked-model.ts";
import { startBrowser } from "./browser.ts";
test("m", async () => {
  const b = await startBrowser();
  for (const model of [bramblehook, ostrevale, slatewing, linked]) {
    const page = await b.newPage({ viewport: { width: 748, height: 3000 } });
    await page.setContent(sheetToHtml(model as never, compile(model as never)));
    await page.emulateMedia({ media: "print" });
    console.log(model.name, JSON.stringify(await page.evaluate(`[...document.querySelectorAll(".one")].map((one) => { const mm = (e) => e ? Math.round(e.getBoundingClientRect().height / 96 * 254) / 10 : 0; one.style.height = "auto"; const parts = [...one.children].map((c) => (c.className || c.tagName) + " " + mm(c)); return [mm(one), mm(one) - mm(one.querySelector(".pictures")), one.querySelector("table").rows.length, parts.join(", ")]; })`), null, 1));
  }
  await b.close();
});
