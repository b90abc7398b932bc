import { pnpm } from "./pnpm.mjs";

pnpm("install", "--frozen-lockfile", "--prefer-offline");
pnpm("run", "build");
