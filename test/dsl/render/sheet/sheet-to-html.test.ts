import { createHash } from "node:crypto";
import { asBuiltTemplate, compile, type Model, type SetupPlan, typedPercent, verify } from "@hingeline/core";
import bramblehook from "@hingeline/examples/bramblehook";
import ostrevale from "@hingeline/examples/ostrevale";
import slatewing from "@hingeline/examples/slatewing";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { numbersOf } from "../../../../packages/dsl/src/render/numbers.ts";
import { planToText } from "../../../../packages/dsl/src/render/plan-to-text.ts";
import { expectedText } from "../../../../packages/dsl/src/render/sheet/read-words.ts";
import { sheetPages, sheetToHtml } from "../../../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import linked from "../../../support/linked-model.ts";
import { lostSign } from "../../../support/lost-sign.ts";

const examples: Readonly<Record<string, Model>> = { bramblehook, ostrevale, slatewing, linked };

describe.each(Object.entries(examples))("the sheet of %s", (_, model) => {
  const plan = compile(model);
  const html = sheetToHtml(model, plan);
  const text = html.replaceAll(/<[^>]*>/g, "\n");

  test("is the same bytes every time", () => {
    expect(sheetToHtml(structuredClone(model), compile(structuredClone(model)))).toBe(html);
  });

  test("has every value to enter, with its pulse, as the plan has it", () => {
    const numbers = numbersOf(plan.radio);
    for (const { limits, settings } of plan.channels) {
      const entered = settings.map(({ enter }) => ({
        percent: numbers.byShare ? enter.sharePercent : enter.percent,
        pulseUs: enter.pulseUs,
      }));
      for (const { percent, pulseUs } of [limits.low, limits.high, ...entered]) {
        const value = numbers.percent(percent).replace("-", "−");
        const pulse = `</td><td class="pulse">${pulseUs.toFixed(1)}<`;
        expect(
          html
            .split(pulse)
            .some(
              (before) => /<td class="value">([^<]*)(<small>[^<]*<\/small>)?$/.exec(before)?.[1] === value,
            ),
        ).toBe(true);
      }
    }
  });

  test("has on its overview what is typed for every channel, a position in shares where limits scale", () => {
    const numbers = numbersOf(plan.radio);
    const unit = plan.radio.endPoints === "scale" ? "share" : "%";
    for (const { limits, neutral, failsafe } of plan.channels) {
      const cells: (readonly [value: number, unit: string, pulseUs: number])[] = [
        limits.low,
        limits.high,
      ].map(({ percent, pulseUs }) => [percent, "%", pulseUs]);
      for (const position of [neutral, failsafe])
        cells.push([typedPercent(position, plan.radio), unit, position.pulseUs]);
      const row = cells.map(([value, of, pulseUs]) => {
        const typed = numbers.percent(value).replace("-", "−");
        return `<b>${typed}</b><small> ${of}, ${pulseUs.toFixed(0)} µs</small>`;
      });
      expect(html.replaceAll(/<\/?td[^>]*>/g, "")).toContain(row.join(""));
    }
  });

  test("says of half the pulses what the finding says, and never that a deflection is not itself", () => {
    for (const { code, numbers } of plan.findings)
      if (code === "half-the-pulses")
        expect(text).toContain(`(cross, ${numbers.halfUs?.toFixed(1)}\u00a0µs) gives`);
    for (const [, given, half] of text.matchAll(/gives (\S+°), not (\S+°)/g)) expect(given).not.toBe(half);
  });

  test("keeps as much clear of the stops as the plan in text does", () => {
    const clear = (value: number) => value.toFixed(1).replace(/\.0$/, "");
    const words = planToText(plan).replaceAll(/\s+/g, " ");
    for (const { guardUs, servos } of plan.channels)
      if (servos.length === 1) {
        const [low, high] = guardUs.map((value) => value.toFixed(1));
        expect(words).toContain(`${low} and ${high} us are kept clear of the stops`);
        for (const value of guardUs) expect(text).toContain(`, kept clear ${clear(value)}`);
      }
  });

  test("calls the value at rest and the failsafe by the names that the plan in text has for them", () => {
    for (const shown of [text, planToText(plan)]) {
      expect(shown).toContain("at rest");
      expect(shown).toContain("failsafe");
      expect(shown).not.toMatch(/neutral|signal lost|signal loss/i);
    }
  });

  test("gives every throw the sign of its deflection", () => {
    for (const { wanted } of plan.channels.flatMap(({ settings }) => settings))
      if (wanted?.throwMm !== undefined && Math.abs(wanted.throwMm) >= 0.05) {
        const sign = wanted.throwMm < 0 ? "−" : "+";
        expect(text).toContain(`°, ${sign}${Math.abs(wanted.throwMm).toFixed(1)}\u00a0mm`);
      }
  });

  test("has every reading, caution and step of the procedure", () => {
    for (const caution of plan.cautions) expect(text).toContain(caution);
    for (const step of plan.procedure) expect(text).toContain(step.text);
    const readings = Object.values(model.surfaces).flatMap((surface) =>
      [surface.servo, ...Object.values(surface.servos ?? {})].flatMap((servo) => servo?.bench.readings ?? []),
    );
    for (const [pulse, at] of readings)
      if (typeof at === "number") {
        const sign = at > 0 ? "+" : at < 0 ? "−" : "";
        expect(text).toContain(`${pulse} ${sign}${Math.abs(at).toFixed(1)}°`);
      }
  });

  test("admits its own script and style by their hashes, and nothing else", () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? "";
    const rules = policy.replaceAll("&#39;", "'").split("; ");
    const hash = (tag: string) => {
      const inside = new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`).exec(html)?.[1] ?? "";
      return `'sha256-${createHash("sha256").update(inside).digest("base64")}'`;
    };
    expect(rules).toEqual([
      "default-src 'none'",
      `script-src ${hash("script")}`,
      `style-src ${hash("style")}`,
      "base-uri 'none'",
      "form-action 'none'",
    ]);
    expect(html).not.toMatch(/<[^>]* (style|on\w+)=/);
    expect(html).not.toMatch(/(src|href)="(?!#)/);
  });

  test("uses no id twice, and every label and reference finds its element", () => {
    const ids = [...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const references = [
      ...html.matchAll(/ (?:for|aria-labelledby)="([^"]*)"|href="#([^"]*)"|url\(#([^)]*)\)/g),
    ].flatMap(([, many, link, paint]) => (many ?? link ?? paint ?? "").split(" "));
    expect(references.filter((id) => !ids.includes(id))).toEqual([]);
  });

  test("shows every servo on exactly one page, at most two to a page", () => {
    const pages = sheetPages(model, plan);
    const shown = pages.flatMap(({ servos }) => servos.map(({ described }) => described.id));
    expect(shown.toSorted()).toEqual(plan.channels.flatMap(({ servos }) => servos).toSorted());
    expect(pages.every(({ servos }) => servos.length <= 2)).toBe(true);
  });
});

describe("pages", () => {
  const titles = (model: Model) => sheetPages(model, compile(model)).map(({ title }) => title);

  test("pair left and right by group or by name, and the servos of one surface", () => {
    expect(titles(bramblehook)).toEqual(["aileronLeft and aileronRight", "elevator", "flaps"]);
    expect(titles(ostrevale)).toEqual(["ailerons", "flaps", "panels"]);
    expect(titles(linked)).toEqual(["flaps", "hatch", "rudder"]);
  });

  test("can be chosen by surface; then overview and procedure are left out", () => {
    const html = sheetToHtml(bramblehook, compile(bramblehook), { surfaces: ["flapRight"] });
    expect([...html.matchAll(/<section class="page[^"]*" id="([^"]*)"/g)].map(([, id]) => id)).toEqual([
      "page-3",
    ]);
  });
});

test("a plan with errors says on every page that it must not be entered", () => {
  const plan = compile(bramblehook);
  const finding = {
    code: "x",
    severity: "error",
    at: "",
    message: "Wrong.",
    do: "Mend it.",
    numbers: {},
  } as const;
  const html = sheetToHtml(bramblehook, { ...plan, findings: [finding] });
  expect(html.match(/DO NOT ENTER THIS PLAN: it has 1 error\./g)).toHaveLength(5);
  expect(html).toContain("<b>ERROR</b> Wrong. Mend it.");
});

test("with as-built readings every value has what was read there, and its verdict in words and by its line", () => {
  const plan = compile(bramblehook);
  const html = sheetToHtml(bramblehook, plan, { surfaces: ["flapLeft"], asBuilt: lostSign(plan) });
  expect(html).toContain('<td class="read verified agrees"><b>1795.0</b><small>agrees</small></td>');
  expect(html).toContain(
    '<td class="read verified differs"><b>1300.0</b><small>DIFFERS by −400.0</small></td>',
  );
  expect(html).toContain('<td class="read verified notMeasured"><small>not measured</small></td>');
  expect(html).toContain("<b>Likely cause</b> In channel 5 (flapLeft), flap at takeoff has lost");
  expect(html).not.toContain("Pulse read at");
  const other = sheetToHtml(bramblehook, plan, { asBuilt: { ...lostSign(plan), plan: "0123abcd" } });
  expect(other).toContain("taken on revision 0123abcd, ANOTHER PLAN, by A. Fitter");
});

describe("a page alone", () => {
  const plan = compile(bramblehook);
  const text = sheetToHtml(bramblehook, plan, { surfaces: ["flapLeft"] }).replaceAll(/<[^>]*>/g, "\n");

  test("says what each deflection must read, how far a pulse may be off and what to do then", () => {
    const { verdicts } = verify(plan, { ...lostSign(plan), channels: [] });
    for (const verdict of verdicts)
      if (verdict.quantity === "deflection" && verdict.place.surface === "flapLeft")
        expect(text).toContain(expectedText(verdict).replace("-", "−"));
    expect(text).toContain("A pulse off by more than ±3.5 µs: receiver off, find why");
  });

  test("has the order of entry as the procedure has it", () => {
    const at = (words: string) => text.indexOf(words);
    const order = [
      "Receiver OFF; motor safe",
      "Limits to 0, direction",
      "Both limits;",
      "receiver ON: reads 1500.0",
    ];
    order.push("At rest, then tow, takeoff, landing", "Transit 3 s; failsafe", "Transmitter off: failsafe");
    order.push("linkages on one by one");
    expect(order.map(at)).toEqual(order.map(at).toSorted((a, b) => a - b));
    expect(Math.min(...order.map(at))).toBeGreaterThan(0);
  });

  test("says that a difference of the sides below its doubt is equal within measurement", () => {
    expect(text).toMatch(
      /flaps differ by 0\.22° at most, .* allowed: below its doubt of ±0\.\d\d°, so equal within measurement\./,
    );
    const [match] = plan.matches;
    const apart = { ...plan, matches: match === undefined ? [] : [{ ...match, uncertaintyDeg: 0.1 }] };
    expect(sheetToHtml(bramblehook, apart, { surfaces: ["flapLeft"] })).toContain(
      "allowed: more than its doubt of ±0.10°.",
    );
  });
});

test("where limits scale the table has a head for its limits, in percent, and one for its positions, in shares", () => {
  const heads = (model: Model) =>
    [
      ...sheetToHtml(model, compile(model)).matchAll(/<th scope="col">(?:limit|position)<\/th>.*?<\/th>/g),
    ].map(([head]) =>
      head
        .replaceAll(/<[^>]*>/g, " ")
        .replaceAll(/ +/g, " ")
        .trim(),
    );
  expect(new Set(heads(bramblehook))).toEqual(new Set(["position ENTER %"]));
  expect(heads(slatewing).slice(0, 2)).toEqual(["limit ENTER %", "position ENTER share"]);
});

test("readings that do not pass leave nothing to sign; those that pass, and a sheet without any, have their lines", () => {
  const plan = compile(bramblehook);
  const refusal = /NOT TO BE SIGNED until it passes: mend what differs and read it again\./g;
  const signs = (html: string) => [html.match(refusal)?.length ?? 0, html.match(/>builder</g)?.length ?? 0];
  const pages = 1 + sheetPages(bramblehook, plan).length;
  expect(signs(sheetToHtml(bramblehook, plan))).toEqual([0, pages]);
  expect(signs(sheetToHtml(bramblehook, plan, { asBuilt: lostSign(plan) }))).toEqual([pages, 0]);
  expect(signs(sheetToHtml(bramblehook, plan, { asBuilt: asPlanned(plan) }))).toEqual([0, pages]);
});

test("what was not measured says so", () => {
  const html = sheetToHtml(linked, compile(linked));
  expect(html).toContain("<bdi>hatch</bdi>: deflection NOT MEASURED; only pulses are known.");
  expect(html).toContain("degrees NOT MEASURED");
  expect(html).toContain("<dt>NOT MEASURED</dt>");
});

test("no name becomes markup, whatever it holds", () => {
  const plan = compile(bramblehook);
  const tagsOf = (html: string) => html.match(/<\/?[a-z]\w*/g);
  const usual = tagsOf(sheetToHtml(bramblehook, plan));
  const hostile = fc.oneof(
    fc.string({ unit: "binary", maxLength: 30 }).map((name) => name.replaceAll(/\p{Cs}/gu, "")),
    fc.constantFrom("</title><script>", '"><img src=x>', "<!--", "'><b>", "</style>", "&lt;i&gt;<i>"),
  );
  fc.assert(
    fc.property(hostile, hostile, (name, label) => {
      const channels = plan.channels.map((one) =>
        one.labels === undefined
          ? one
          : { ...one, labels: Object.fromEntries(Object.keys(one.labels).map((servo) => [servo, label])) },
      );
      const html = sheetToHtml(bramblehook, { ...plan, model: name, channels });
      expect(tagsOf(html)).toEqual(usual);
    }),
    { numRuns: 40 },
  );
});

/** As-built readings in which every channel at rest is as planned, and nothing else was read. */
function asPlanned(plan: SetupPlan) {
  const template = asBuiltTemplate(plan);
  return {
    ...template,
    channels: template.channels.map((one) => {
      const planned = plan.channels.find(({ channel }) => channel === one.channel);
      return planned === undefined ? one : { ...one, neutralUs: planned.neutral.pulseUs };
    }),
  };
}
