import type { Address } from "../address/address.ts";

/** Why data is no model, as plain data. "Expected `expected`, got `received`." is a sentence for every kind. */
export type ModelProblem = {
  /** Where in the data; for an unknown key or a bad name, that key stands last. */
  readonly address: Address;
  /** What should stand there, with its unit and range. */
  readonly expected: string;
  /** What stands there, shortened; "nothing" where a key is missing. */
  readonly received: string;
} & (
  | {
      /**
       * `notPlain`: no JSON data; `missing`: a key that must be there; `wrongType`: another type than expected;
       * `badText`, `badName`: a text or key of the wrong form; `wrongShape`: the parts do not go together.
       */
      readonly kind: "notPlain" | "missing" | "wrongType" | "badText" | "badName" | "wrongShape";
    }
  /** A number beyond the plausible; `limit` is in the unit that `expected` names. */
  | {
      readonly kind: "outOfRange";
      readonly value: number;
      readonly limit: number;
      readonly limitAllowed: boolean;
    }
  /** A list that is too short or too long. */
  | { readonly kind: "wrongLength"; readonly length: number; readonly limit: number }
  /** A key that nothing reads; `nearest` is the known key that was most likely meant. */
  | { readonly kind: "unknownKey"; readonly known: readonly string[]; readonly nearest?: string }
  /** None of the values that are possible here. */
  | {
      readonly kind: "notOneOf";
      readonly possible: readonly (string | number | boolean)[];
      readonly nearest?: string;
    }
);
