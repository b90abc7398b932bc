// Compiles random models and looks for any pulse outside what is safe. Run: npm run soak -- 1000000
import { compile } from "../../packages/core/src/compile/compile.ts";
import { draftPlan } from "../../packages/core/src/compile/draft-plan.ts";
import { seededRandom } from "../../packages/core/src/uncertainty/random.ts";
import { randomModel } from "../support/random-model.ts";
import { unsafePulses } from "../support/unsafe-pulses.ts";

const count = Number(process.argv[2] ?? 100_000);
const seed = Number(process.argv[3] ?? 1);
const random = seededRandom(seed);
let [channels, settings, refused] = [0, 0, 0];
for (let index = 0; index < count; index++) {
  const model = randomModel(random);
  // The procedure is most of the time and holds no pulse of its own; every fiftieth model gets one too.
  const plan = index % 50 === 0 ? compile(model) : draftPlan(model);
  const unsafe = unsafePulses(plan);
  if (unsafe.length > 0) {
    console.error(`model ${index} of seed ${seed}: ${unsafe.join("; ")}\n${JSON.stringify(model)}`);
    process.exit(1);
  }
  channels += plan.channels.length;
  settings += plan.channels.reduce((sum, channel) => sum + channel.settings.length, 0);
  if (plan.findings.some(({ severity }) => severity === "error")) refused++;
}
console.log(
  `${count} models of seed ${seed}: ${channels} channels, ${settings} settings, ${refused} models with errors; every pulse is safe.`,
);
