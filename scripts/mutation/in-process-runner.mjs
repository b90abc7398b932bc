import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { createVitest } from "vitest/node";

const TIMES = "test-times.json";

/**
 * A test runner for Stryker that reads core and its tests once and keeps that worker of vitest. A mutant is then a message
 * to tester.mjs in the worker and costs milliseconds; Stryker's own runner for vitest reads everything again each time.
 *
 * A worker that hangs is not seen to here: Stryker ends the whole process when time is up, and starts it anew.
 */
class InProcessRunner {
  channel = new BroadcastChannel("mutation");

  /** Yes: for a mutant of code that runs while a module is read, everything is read again with the mutant on. */
  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.vitest = await createVitest("test", {
      config: "vitest.mutation.config.ts",
      runner: fileURLToPath(new URL("tester.mjs", import.meta.url)),
      pool: "threads",
      isolate: false,
      maxWorkers: 1,
      watch: false,
      reporters: [{}],
    });
    const { problems } = await this.start();
    if (problems.length > 0) throw new Error(problems.join("\n"));
    if (existsSync(TIMES)) this.times = JSON.parse(readFileSync(TIMES, "utf8"));
  }

  async dryRun() {
    const { results, coverage } = await this.ask({});
    this.times = Object.fromEntries(results.map(({ id, ms }) => [id, ms]));
    // In Stryker's copy of the project, for the processes to come.
    writeFileSync(TIMES, JSON.stringify(this.times));
    return { status: "complete", tests: results.map(describeResult), mutantCoverage: coverage };
  }

  async mutantRun({ activeMutant, hitLimit, mutantActivation, reloadEnvironment, testFilter }) {
    const mutant = { id: activeMutant.id, hitLimit };
    const isStatic = mutantActivation === "static";
    if (isStatic || reloadEnvironment) {
      const { problems } = await this.ask({ readAgain: true, mutant: isStatic ? mutant : undefined });
      if (problems.length > 0) return killed([], problems[0], 0);
    }
    const question = { mutant, tests: testFilter, times: this.times };
    const first = await this.ask(question);
    if (first.spoilt) await this.ask({ readAgain: true });
    const { results, hits } = first.spoilt ? await this.ask(question) : first;
    if (hits > hitLimit) return { status: "timeout", reason: `met more than ${hitLimit} times` };
    const failed = results.find(({ failure }) => failure !== undefined);
    if (failed !== undefined) return killed([failed.id], failed.failure, results.length);
    return { status: "survived", nrOfTests: results.length };
  }

  /** Vitest reads the files and takes itself to be running them from then on. If it ends all the same, Stryker starts anew. */
  start() {
    const answer = this.nextAnswer();
    this.vitest.start().finally(() => process.exit(1));
    return answer;
  }

  ask(question) {
    const answer = this.nextAnswer();
    this.channel.postMessage(question);
    return answer;
  }

  nextAnswer() {
    return new Promise((resolve) => {
      this.channel.onmessage = ({ data }) => resolve(data);
    });
  }
}

function killed(killedBy, failureMessage, nrOfTests) {
  return { status: "killed", killedBy, failureMessage, nrOfTests };
}

function describeResult({ id, name, fileName, ms, failure }) {
  const test = { id, name, fileName, timeSpentMs: ms };
  return failure === undefined ? { ...test, status: 0 } : { ...test, status: 1, failureMessage: failure };
}

// What declareClassPlugin of @stryker-mutator/api makes.
export const strykerPlugins = [{ kind: "TestRunner", name: "in-process", injectableClass: InProcessRunner }];
