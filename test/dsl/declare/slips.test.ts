import { expect, test } from "vitest";
import { checkSource } from "./check-source.ts";
import { model, slips } from "./slips.ts";

// What the compiler prints is what a builder reads in the editor. `-u` writes test/golden/slips.txt again: read it aloud.

test("the model that is spoilt below compiles", () => {
  expect(checkSource(model).errors).toEqual([]);
});

test("the likeliest slips say what is wrong, where it stands", async () => {
  const said = slips.map(([what, right, wrong]) => {
    expect(model.split(right), what).toHaveLength(2);
    const { errors } = checkSource(model.replace(right, wrong));
    expect(errors, what).not.toEqual([]);
    return `## ${what}\n${errors.join("\n")}\n`;
  });
  await expect(said.join("\n")).toMatchFileSnapshot("../../golden/slips.txt");
});

test("a name misspelt is answered with the name that was meant", () => {
  const meant = [
    ["elevator: deg(-2)", "elevater: deg(-2)", "elevator"],
    ["pitch: { elevator", "pitsh: { elevator", "pitch"],
    ["channel: 6, bench", "channel: 6, bensh", "bench"],
    ["flapRight: { servo", "flapRight: { sevro", "servo"],
    ["transit:", "transits:", "transit"],
  ] as const;
  for (const [right, wrong, name] of meant)
    expect(checkSource(model.replace(right, wrong)).errors.join()).toContain(
      `Did you mean to write '${name}'?`,
    );
});

test("a plain number for a deflection is answered with how to write one", () => {
  const { errors } = checkSource(model.replace("flaps: deg(38)", "flaps: 38"));
  expect(errors.join()).toContain("write it as deg(…) or atThrow(mm(…))");
});
