import { Bench } from "tinybench";

/** One line of the table: how long something takes beside something else in the same run. */
export interface Row {
  readonly what: string;
  readonly tookNs: number;
  readonly beside: string;
  readonly besideNs: number;
  /** What tookNs / besideNs, or the reverse for a reference that should be slower, is meant to be. */
  readonly aim?: string;
}

/** A set of tasks: what each took, nanoseconds a call (median), measured in one run. */
export async function measure<Name extends string>(
  tasks: Readonly<Record<Name, () => unknown>>,
  { calls = 1, timeMs = 300 }: { readonly calls?: number; readonly timeMs?: number } = {},
): Promise<Readonly<Record<Name, number>>> {
  const bench = new Bench({ time: timeMs, warmupTime: timeMs, iterations: 5, warmupIterations: 2 });
  for (const [name, task] of Object.entries<() => unknown>(tasks)) bench.add(name, task);
  await bench.run();
  const took = bench.tasks.map(({ name, result }) => {
    if (result.state !== "completed") throw new Error(`${name}: ${result.state}`);
    return [name, (result.latency.p50 * 1e6) / calls];
  });
  return Object.fromEntries(took) as Record<Name, number>;
}

/** A thousand inputs from low to high: a task that runs over all of them hides neither the loop's start nor a constant result. */
export function inputs(low: number, high: number, count = 1000): readonly number[] {
  return Array.from({ length: count }, (_, index) => low + ((high - low) * index) / (count - 1));
}

/** The sum of a function over the inputs, so that no call can be left out. */
export function over(values: readonly number[], of: (value: number) => number): () => number {
  return () => {
    let sum = 0;
    for (const value of values) sum += of(value);
    return sum;
  };
}
