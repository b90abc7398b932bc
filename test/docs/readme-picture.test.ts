import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { fakeIo } from "../dsl/cli/fake-io.ts";
import { run } from "../dsl/cli/run.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const readme = readFileSync(`${root}README.md`, "utf8");

test("the picture of the README is what the command beside it writes today, and says what it shows", async () => {
  const [, alt = "", file] = /!\[([^\]]+)\]\((docs\/[\w-]+\.svg)\)/.exec(readme) ?? [];
  const [, model = "", picture = ""] =
    /<!-- picture: npx hingeline sheet (\S+) --picture (\S+) -->/.exec(readme) ?? [];
  expect(alt.length).toBeGreaterThan(40);
  const { stdout } = await run(["sheet", model, "--picture", picture], { ...fakeIo(), cwd: root });
  await expect(stdout).toMatchFileSnapshot(`${root}${file}`);
});
