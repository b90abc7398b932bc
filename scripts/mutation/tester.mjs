import { TestRunner, vi } from "vitest";

// Stryker's instrumented sources look here: which mutant is on, how often it was met, which test meets which.
globalThis.__stryker__ ??= {};
const mutation = globalThis.__stryker__;

// Some modules of core remember results in a weak map. vitest.mutation.config.ts makes these maps of this class,
// so that no test sees what was computed with another mutant.
const memories = [];
globalThis.ForgetfulWeakMap = class {
  known = new WeakMap();
  constructor() {
    memories.push(this);
  }
  get(key) {
    return this.known.get(key);
  }
  set(key, value) {
    this.known.set(key, value);
  }
};

/**
 * The half that lives in vitest's worker: reads all test files, runs none of them as vitest would, and stays.
 * Then it does as in-process-runner.mjs asks over the channel: one mutant on, some tests run, an answer.
 *
 * It calls the functions of the tests itself, so hooks (`beforeEach` and the like) would be left out; it refuses them.
 */
export default class Tester extends TestRunner {
  channel = new BroadcastChannel("mutation");
  // Vitest goes through this list, one file after another: what is added to it is read next.
  testFiles = [...this.workerState.ctx.files];
  read = [];

  // Vitest would run the tests of a file here, and forget its snapshots afterwards.
  async runSuite() {}
  async onAfterRunSuite() {}

  // Vitest takes a file for done here. After the last one it waits until everything has to be read again.
  async onAfterRunFiles(files) {
    this.read.push(...files);
    if (this.read.length < this.testFiles.length) return;
    this.tests = this.read.flatMap(testsOf);
    let question = await this.next({ problems: this.read.flatMap(problemsOf) });
    while (!question.readAgain) question = await this.next(await this.answer(question));
    this.forgetAll();
    switchOn(question.mutant);
    this.workerState.ctx.files.push(...this.testFiles);
  }

  /** Gives an answer, waits for the next question. */
  next(answer) {
    return new Promise((resolve) => {
      this.channel.onmessage = ({ data }) => resolve(data);
      this.channel.postMessage(answer);
    });
  }

  async answer({ mutant, tests, times }) {
    if (mutant === undefined) return { results: await this.tryAll(), coverage: mutation.mutantCoverage };
    // One that was on while the files were read has been met already: its hits count.
    const wasOn = mutation.activeMutant === mutant.id;
    if (!wasOn) switchOn(mutant);
    stopCovering();
    const results = await this.tryUntilOneFails(tests, times);
    const hits = mutation.hitCount;
    return { results, hits, spoilt: !wasOn && (await this.stillFails(results.at(-1))) };
  }

  /** Whether a test fails without any mutant too: an earlier one has then changed something that the tests share. */
  async stillFails({ id, failure } = {}) {
    if (failure === undefined) return false;
    switchOn(undefined);
    const [again] = await this.tryUntilOneFails([id], {});
    return again.failure !== undefined;
  }

  forgetAll() {
    vi.resetModules();
    memories.length = 0;
    this.read = [];
  }

  async tryAll() {
    const results = [];
    for (const test of this.tests) results.push(await this.try(test));
    return results;
  }

  /** The quickest tests first: most mutants need no more. */
  async tryUntilOneFails(ids = this.tests.map(({ id }) => id), times) {
    const wanted = new Set(ids);
    const tests = this.tests.filter(({ id }) => wanted.has(id));
    const results = [];
    for (const test of tests.sort((a, b) => (times[a.id] ?? 0) - (times[b.id] ?? 0))) {
      results.push(await this.try(test));
      if (results.at(-1).failure !== undefined) break;
    }
    return results;
  }

  async try(test) {
    for (const memory of memories) memory.known = new WeakMap();
    mutation.currentTestId = test.id;
    const result = { id: test.id, name: test.fullName, fileName: test.file.filepath };
    const start = performance.now();
    try {
      this.onBeforeTryTask(test);
      await TestRunner.getTestFn(test)();
      this.onAfterTryTask(test);
    } catch (error) {
      result.failure = String(error?.message ?? error);
    }
    mutation.currentTestId = undefined;
    return { ...result, ms: performance.now() - start };
  }
}

function switchOn(mutant) {
  mutation.activeMutant = mutant?.id;
  mutation.hitLimit = mutant?.hitLimit;
  mutation.hitCount = 0;
}

/** Counting what each test meets takes more time than the tests; only the first run is asked for it. */
function stopCovering() {
  for (const stop of mutation.stopCovering?.splice(0) ?? []) stop();
}

function testsOf(task) {
  if (task.type === "suite") return task.tasks.flatMap(testsOf);
  return task.mode === "run" ? [task] : [];
}

function problemsOf(suite) {
  if (suite.result?.errors !== undefined) return suite.result.errors.map(({ message }) => message);
  const hooks = Object.values(TestRunner.getSuiteHooks(suite)).flat();
  const problems = hooks.map((hook) => `${suite.fullName} has a hook that would not be run: ${hook}`);
  return [...problems, ...suite.tasks.filter(({ type }) => type === "suite").flatMap(problemsOf)];
}
