import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { sha256 } from "../../../packages/core/src/plan/sha256.ts";

test("sha256 agrees with node's own on any text, of every length around a block's end", () => {
  const check = (text: string): void => {
    expect(sha256(text)).toBe(createHash("sha256").update(text, "utf8").digest("hex"));
  };
  for (let length = 0; length <= 130; length++) check("a".repeat(length));
  fc.assert(fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), check));
});

test("sha256 gives the published digests", () => {
  // NIST CSRC example values for FIPS 180-4, SHA256.pdf: one block and two blocks.
  expect(sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  expect(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")).toBe(
    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
  );
});
