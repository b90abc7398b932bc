import fc from "fast-check";

// One seed for all properties, so that a run can be repeated to the byte; FC_SEED=random (or a number) looks elsewhere.
const { FC_SEED = "20261125" } = process.env;
if (FC_SEED !== "random") fc.configureGlobal({ seed: Number(FC_SEED) });
