import { expect, test } from "vitest";
import type { Bench, Model } from "../../../packages/core/src/model/model.ts";
import {
  expectTypesMatch,
  type TypesMatch,
  type Unbranded,
} from "../../../packages/core/src/units/expect-types-match.ts";
import type { Deg, Us } from "../../../packages/core/src/units/quantity.ts";

// Canaries: the line that holds schema and interface together fails to compile where they differ. tsc runs over this.

test("expectTypesMatch compiles for what is the same without units and read-only marks", () => {
  expectTypesMatch<
    Unbranded<{ readonly a: Us; readonly b?: readonly [Deg, "x"] }>,
    { a: number; b?: [number, "x"] }
  >(true);
  expect(expectTypesMatch<Unbranded<Model>, Unbranded<Model>>(true)).toBeUndefined();
});

test("expectTypesMatch does not compile for a key too few, too many, optional or of another type", () => {
  type Plain = Unbranded<Bench>;
  // @ts-expect-error
  expectTypesMatch<Plain, Omit<Plain, "guard">>(true);
  // @ts-expect-error
  expectTypesMatch<Plain, Plain & { extra?: number }>(true);
  // @ts-expect-error
  expectTypesMatch<Unbranded<{ readonly level: Us }>, { level?: number }>(true);
  // @ts-expect-error
  expectTypesMatch<Unbranded<{ readonly level?: Us }>, { level?: number | undefined }>(true);
  // @ts-expect-error
  expectTypesMatch<Unbranded<{ readonly level: Us }>, { level: string }>(true);
  // @ts-expect-error
  expectTypesMatch<Unbranded<Model>, Omit<Unbranded<Model>, "yields">>(true);
  const differs: TypesMatch<{ a: 1 }, { a: 2 }> = false;
  expect(differs).toBe(false);
});
