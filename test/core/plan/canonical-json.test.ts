import canonicalize from "canonicalize";
import fc from "fast-check";
import { expect, test } from "vitest";
import { canonicalJson } from "../../../packages/core/src/plan/canonical-json.ts";

test("canonicalJson agrees with an independent RFC 8785 package on any JSON value", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      // RFC 8785 asks for well-formed text; lone surrogates are refused below.
      fc.pre(!JSON.stringify(value).includes("\\ud"));
      expect(canonicalJson(value)).toBe(canonicalize(value));
    }),
  );
});

test("canonicalJson sorts keys by UTF-16 code units and writes numbers as RFC 8785 3.2.2.3 does", () => {
  // The key order of RFC 8785 3.2.3 and numbers of its appendix B.
  const keys = { "\u20ac": 1, "\r": 2, "\ufb33": 3, "1": 4, "\ud83d\ude00": 5, "\u0080": 6, "\u00f6": 7 };
  expect(canonicalJson(keys)).toBe(
    '{"\\r":2,"1":4,"\u0080":6,"\u00f6":7,"\u20ac":1,"\ud83d\ude00":5,"\ufb33":3}',
  );
  expect(canonicalJson([Number("333333333.33333329"), 1e30, 4.5, 2e-3, 1e-27, -0])).toBe(
    "[333333333.3333333,1e+30,4.5,0.002,1e-27,0]",
  );
});

test("canonicalJson leaves out undefined members and refuses what JSON cannot hold", () => {
  expect(canonicalJson({ b: 1, a: undefined })).toBe('{"b":1}');
  for (const value of [
    Number.NaN,
    [1, Number.POSITIVE_INFINITY],
    { a: () => 1 },
    new Date(0),
    "\ud800",
    undefined,
    1n,
  ])
    expect(() => canonicalJson(value)).toThrow(TypeError);
});
