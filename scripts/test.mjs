import { pnpm } from "./pnpm.mjs";

pnpm("run", "types");
pnpm("run", "lint");
pnpm("run", "unused");
pnpm("run", "budgets");
pnpm("run", "unit");
pnpm("run", "soak", "100000");
