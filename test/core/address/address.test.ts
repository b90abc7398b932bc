import fc from "fast-check";
import { expect, test } from "vitest";
import { formatAddress, parseAddress } from "../../../packages/core/src/address/address.ts";

test("formatAddress writes names with dots, indices in brackets and odd names quoted", () => {
  expect(formatAddress(["surfaces", "flapLeft", "servo", "bench", "readings", 2])).toBe(
    "surfaces.flapLeft.servo.bench.readings[2]",
  );
  expect(formatAddress(["surfaces", 'my "flap"', "chord"])).toBe('surfaces["my \\"flap\\""].chord');
  expect(formatAddress([])).toBe("");
});

test("parseAddress(formatAddress(a)) is a, for any names", () => {
  const step = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.constantFrom("a.b", "x]", '"', "1", ""),
    fc.nat({ max: 999 }),
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 6 }), (address) => {
      expect(parseAddress(formatAddress(address))).toEqual(address);
    }),
  );
});

test("parseAddress refuses what is no address", () => {
  for (const text of [
    "a..b",
    ".a",
    "a[0]b",
    "a[",
    "a[x]",
    "a[01]",
    'a["b]',
    'a["b"]',
    'a["\\x"]',
    "a b",
    "[-1]",
  ])
    expect(parseAddress(text)).toBeUndefined();
});
