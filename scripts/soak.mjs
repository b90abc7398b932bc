import { availableParallelism } from "node:os";
import { bundle, run } from "./run-bundled.mjs";

// Each core takes its share of the models, from a seed of its own.
const count = Number(process.argv[2] ?? 100_000);
if (!Number.isInteger(count) || count < 1) {
  console.error("Usage: npm run soak -- 100000 (how many models, 1 or more)");
  process.exit(2);
}
const cores = Math.min(4, availableParallelism());
const code = await bundle("test/soak/random-models.ts");
const shares = Array.from({ length: cores }, (_, index) =>
  run(code, [String(Math.ceil(count / cores)), String(index + 1)]),
);
const statuses = await Promise.all(shares);
process.exit(Math.max(...statuses));
