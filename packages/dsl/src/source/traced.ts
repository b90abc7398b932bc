import type { ts } from "ts-morph";

export type Scalar = string | number | boolean | null | undefined;

/** A value of the model, and where in the files it comes from. */
export type Traced = (TracedValue | TracedObject | TracedList | TracedFunction | TracedModule | Unknown) & {
  /** The name that it stands under, as it is written in an object literal. */
  readonly key?: ts.Node | undefined;
};

export interface TracedValue {
  readonly kind: "value";
  readonly value: Scalar;
  /** What to show: the literal, else the expression that computes it. */
  readonly node: ts.Node;
  /** The literal that is the value, its sign included; undefined where the value is computed. */
  readonly literal: ts.Expression | undefined;
}

export interface TracedObject {
  readonly kind: "object";
  readonly node: ts.Node;
  readonly parts: ReadonlyMap<string, Traced>;
  /** The braces that the parts stand in, so that one can be added. */
  readonly literal: ts.ObjectLiteralExpression | undefined;
  /** Spreads of what is not known, which may hold any part. */
  readonly open: readonly ts.Node[];
}

export interface TracedList {
  readonly kind: "list";
  readonly node: ts.Node;
  readonly items: readonly Traced[];
  /** The brackets, where they hold exactly these items. */
  readonly literal: ts.ArrayLiteralExpression | undefined;
  readonly open: readonly ts.Node[];
}

/** A function of hingeline, by the name that it is exported under. */
export interface TracedFunction {
  readonly kind: "function";
  readonly node: ts.Node;
  readonly name: string;
}

/** `import * as` of a file or of hingeline. */
export interface TracedModule {
  readonly kind: "module";
  readonly node: ts.Node;
  readonly find: (name: string) => Traced | undefined;
}

/** What only running the model would tell. */
export interface Unknown {
  readonly kind: "unknown";
  readonly node: ts.Node;
}

/** The value of an expression that is no literal. */
export function computed(value: Scalar, node: ts.Node): TracedValue {
  return { kind: "value", value, node, literal: undefined };
}

/** The value that a literal writes out. */
export function written(value: Scalar, literal: ts.Expression): TracedValue {
  return { kind: "value", value, node: literal, literal };
}
