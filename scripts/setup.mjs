import { pnpmQuietly } from "./pnpm.mjs";

pnpmQuietly("Installing", "install", "--frozen-lockfile", "--prefer-offline");
pnpmQuietly("Building", "run", "build");
