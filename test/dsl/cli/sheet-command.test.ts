import { readFileSync } from "node:fs";
import { asBuiltTemplate, compile, type Model } from "@hingeline/core";
import { describe, expect, test } from "vitest";
import type { Live } from "../../../packages/dsl/src/cli/live.ts";
import { sheetToHtml } from "../../../packages/dsl/src/render/sheet/sheet-to-html.ts";
import { examples } from "../source/fixture-source.ts";
import { fakeIo, fixtures } from "./fake-io.ts";
import { run } from "./run.ts";

const model = JSON.parse(readFileSync(`${fixtures}wrenfield.json`, "utf8")) as Model;
const html = sheetToHtml(model, compile(model));
const out = `${fixtures}out.html`;

describe("sheet", () => {
  test("prints the bench sheet", async () => {
    expect(await run(["sheet", "wrenfield.ts"])).toEqual({ exitCode: 0, stdout: html, stderr: "" });
  });

  test("--out writes it whole", async () => {
    const io = fakeIo();
    const { exitCode, stdout } = await run(["sheet", "wrenfield.ts", "--out", "out.html"], io);
    expect([exitCode, stdout, [...io.disk]]).toEqual([0, "", [[out, html]]]);
  });

  test("of a plan with errors is printed with the refusal and exits with 1, but never written", async () => {
    const printed = await run(["sheet", "too-far.ts"]);
    expect(printed.exitCode).toBe(1);
    expect(printed.stdout).toContain("DO NOT ENTER THIS PLAN");
    const io = fakeIo();
    const { exitCode, stderr } = await run(["sheet", "too-far.ts", "--out", "out.html"], io);
    expect([exitCode, io.disk.size]).toEqual([1, 0]);
    expect(stderr).toContain("Nothing was written to out.html.");
  });

  test("--picture prints one picture, or says which there are", async () => {
    const { stdout } = await run(["sheet", "wrenfield.ts", "--picture", "flap:response"]);
    expect(stdout).toMatch(/^<svg .*<\/svg>\n$/s);
    const { exitCode, stderr } = await run(["sheet", "wrenfield.ts", "--picture", "flap"]);
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/^hingeline: There is no picture "flap"\. There is flap:response/);
  });

  test("--surface and --pair choose pages, and say so where there are none", async () => {
    const { stdout } = await run(["sheet", "wrenfield.ts", "--surface", "flap"]);
    expect(stdout).not.toContain('id="overview"');
    expect(stdout).toContain('id="page-1"');
    expect((await run(["sheet", "wrenfield.ts", "--pair", "flap"])).stdout).toBe(stdout);
    for (const [option, word] of [
      ["--surface", "surface"],
      ["--pair", "pair"],
    ] as const) {
      const { exitCode, stderr } = await run(["sheet", "wrenfield.ts", option, "flop"]);
      expect([exitCode, stderr]).toEqual([
        2,
        `hingeline: There is no ${word} "flop". Did you mean "flap"? There is flap.\n`,
      ]);
    }
  });

  test("--format markdown prints Markdown", async () => {
    expect((await run(["sheet", "wrenfield.ts", "--format", "markdown"])).stdout).toMatch(/^# /);
  });

  test("--as-built shows what was read with its verdict, and refuses what is no as-built file", async () => {
    const asBuilt = {
      ...asBuiltTemplate(compile(model)),
      channels: [{ channel: 1, neutralUs: 1400, powerUpUs: "none" }],
    };
    const disk = new Map([
      [`${fixtures}built.json`, JSON.stringify(asBuilt)],
      [`${fixtures}other.json`, "{}"],
    ]);
    for (const format of ["html", "markdown"]) {
      const args = ["sheet", "wrenfield.ts", "--format", format, "--as-built", "built.json"];
      const { exitCode, stdout } = await run(args, fakeIo({ disk }));
      expect(exitCode).toBe(0);
      expect(stdout).toContain("1400.0");
      expect(stdout).toMatch(/DIFFERS by [−+]\d/);
      expect(stdout).toContain("not measured");
    }
    const { exitCode, stderr } = await run(
      ["sheet", "wrenfield.ts", "--as-built", "other.json"],
      fakeIo({ disk }),
    );
    expect(exitCode).toBe(2);
    expect(stderr).toMatch(/^hingeline: other\.json is no as-built file/);
    expect((await run(["sheet", "-", "--as-built", "-"])).exitCode).toBe(2);
  });

  test("--out never writes over the model, another model or the as-built readings", async () => {
    const readings = JSON.stringify(asBuiltTemplate(compile(model)));
    for (const [name, ...options] of [
      ["mine.json"],
      ["mine.json", "--watch"],
      ["other.ts"],
      ["read.json", "--as-built", "read.json"],
      ["./read.json", "--as-built", "read.json", "--watch"],
    ] as const) {
      const disk = new Map([
        [`${fixtures}mine.json`, JSON.stringify(model)],
        [`${fixtures}other.ts`, "mine too"],
        [`${fixtures}read.json`, readings],
      ]);
      const before = [...disk];
      const { exitCode, stdout, stderr } = await run(
        ["sheet", "mine.json", ...options, "--out", name],
        fakeIo({ disk }),
      );
      expect([exitCode, stdout, [...disk]]).toEqual([2, "", before]);
      expect(stderr).toContain(`hingeline: --out ${name} `);
    }
  });

  test("tells what there is no picture of in lines of 80 columns", async () => {
    const io = { ...fakeIo(), cwd: examples };
    expect((await run(["sheet", "bramblehook.ts", "--picture", "flap"], io)).exitCode).toBe(2);
    const lines = io.printed.stderr.split("\n");
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  test("refuses what is no model as every command does", async () => {
    expect((await run(["sheet", "list.json"])).exitCode).toBe(2);
    expect((await run(["sheet", "misspelt.json"])).exitCode).toBe(1);
  });
});

describe("sheet --watch", () => {
  test("needs a model file and something to watch with", async () => {
    expect((await run(["sheet", "wrenfield.ts", "--watch"])).exitCode).toBe(2);
  });

  test("serves the page, makes it anew when a file beside the model changes, and keeps the last good one", async () => {
    const path = `${fixtures}watched.json`;
    const disk = new Map([[path, JSON.stringify(model)]]);
    let change = () => {};
    let end = () => {};
    let shown = () => "";
    let told = 0;
    let closed = false;
    const ended = new Promise<void>((settle) => {
      end = settle;
    });
    const serving = new Promise<void>((ready) => {
      const live: Live = {
        ended: () => ended,
        watchFolder: (folder, changed) => {
          expect(`${folder}/`).toBe(fixtures);
          change = changed;
          ready();
        },
        serve: async (page) => {
          shown = page;
          return {
            url: "http://127.0.0.1:1/",
            announce: () => {
              told++;
            },
            close: () => {
              closed = true;
            },
          };
        },
      };
      io = { ...fakeIo({ disk }), live };
    });
    const finished = run(["sheet", "watched.json", "--out", "out.html", "--watch"], io);
    await serving;
    expect(shown()).toBe(sheetToHtml(model, compile(model), { follow: true }));
    expect(disk.get(out)).toBe(html);

    disk.set(path, JSON.stringify({ ...model, name: "Renamed" }));
    change();
    await expect.poll(() => told).toBe(1);
    expect(shown()).toContain("<bdi>Renamed</bdi>");
    await expect.poll(() => disk.get(out)).toContain("<bdi>Renamed</bdi>");

    disk.set(path, "{");
    change();
    await expect.poll(() => io?.printed.stderr).toContain("watched.json");
    expect(shown()).toContain("<bdi>Renamed</bdi>");
    end();
    expect((await finished).exitCode).toBe(0);
    expect([told, closed]).toEqual([1, true]);
  });
});

test("sheet --watch writes no file of a model that does not compile, and says so", async () => {
  const disk = new Map<string, string>();
  const live: Live = {
    ended: async () => {},
    watchFolder: () => {},
    serve: async () => ({ url: "http://127.0.0.1:1/", announce: () => {}, close: () => {} }),
  };
  const { exitCode, stderr } = await run(["sheet", "wrong-unit.ts", "--watch", "--out", "out.html"], {
    ...fakeIo({ disk }),
    live,
  });
  expect([exitCode, disk.size]).toEqual([0, 0]);
  expect(stderr).toMatch(/\(does-not-compile\)[\s\S]*\nNothing was written to out\.html\.\n/);
});

let io: (ReturnType<typeof fakeIo> & { readonly live: Live }) | undefined;
