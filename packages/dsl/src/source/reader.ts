import type { ts } from "ts-morph";
import type { Traced, Unknown } from "./traced.ts";

/** What the readers of single kinds of expressions need of the one that calls them. */
export interface Reader {
  /** The value of any expression. */
  readonly read: (node: ts.Expression) => Traced;
  /** Notes that something is not read, and stands in for it. */
  readonly refuse: (node: ts.Node, what: string, remedy?: string) => Unknown;
  /** Counts work done; false when there has been too much of it, which is noted once. */
  readonly spend: (node: ts.Node) => boolean;
  /** What a name of `node`'s file stands for. */
  readonly resolve: (node: ts.Identifier) => Traced;
}
