import { compile, type Model, orderOfEntry } from "@hingeline/core";
import { draftPlan } from "../../packages/core/src/compile/draft-plan.ts";
import { largeModel } from "../support/large-model.ts";
import { measure, type Row } from "./row.ts";

/** A plan by the size of its model: as its surfaces grow in number, and as its selectors do. */
export async function rows(): Promise<readonly Row[]> {
  const model = (surfaces: number, selectors: number) => largeModel({ surfaces, selectors });
  const models = {
    three: model(3, 3),
    twelve: model(12, 3),
    sixSelectors: model(12, 6),
    twelveSelectors: model(12, 12),
    many: model(200, 3),
  };
  const took = await measure(
    {
      three: () => compile(models.three),
      twelve: () => compile(models.twelve),
      sixSelectors: () => compile(models.sixSelectors),
      twelveSelectors: () => compile(models.twelveSelectors),
      twelveDrafted: () => planFormless(models.twelve),
      many: () => planFormless(models.many),
    },
    { timeMs: 1000 },
  );
  const beside = { beside: "12 surfaces, 3 selectors", besideNs: took.twelve };
  return [
    {
      what: "compile 12 surfaces",
      tookNs: took.twelve,
      beside: "3 surfaces",
      besideNs: took.three,
      aim: "1 ms",
    },
    {
      what: "plan of 200 surfaces",
      tookNs: took.many,
      beside: "plan of 12 surfaces",
      besideNs: took.twelveDrafted,
      aim: "<= 17",
    },
    { what: "compile 12, 6 selectors", tookNs: took.sixSelectors, ...beside, aim: "<= 2" },
    { what: "compile 12, 12 selectors", tookNs: took.twelveSelectors, ...beside, aim: "<= 4" },
  ];
}

/** What compile does once it has looked at the form, which lets no more than 32 channels pass. */
function planFormless(model: Model): unknown {
  return orderOfEntry(draftPlan(model));
}
