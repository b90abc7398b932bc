import { readFileSync } from "node:fs";
import { deg, type Model } from "@hingeline/core";
import { fixtures } from "./fake-io.ts";

/** The model of wrenfield.json and wrenfield.ts. */
export const wrenfield = JSON.parse(readFileSync(`${fixtures}wrenfield.json`, "utf8")) as Model;

/** The model of too-far.ts: one detent beyond what is safe. */
export const tooFar: Model = {
  ...wrenfield,
  moves: {
    lever: { stowed: { flap: deg(0) }, takeoff: { flap: deg(12) }, landing: { flap: deg(29.5) } },
  },
};
