import { type ComponentChildren, createElement, type VNode } from "preact";

export type Attribute = string | number | boolean | undefined;
/** Written out by the renderer, which escapes every attribute and every text. */
export type Element = VNode;
export type Children = ComponentChildren;

/** An element of HTML or SVG by its tag, with attributes as they are written in a document. */
export function h(
  tag: string,
  attributes: Readonly<Record<string, Attribute>> = {},
  ...children: Children[]
): Element {
  return createElement(tag, attributes as Record<string, Attribute>, ...children) as Element;
}

/** A constant of ours as the whole content of an element, unescaped; nothing of a user's may go this way. */
export function verbatim(tag: "script" | "style", text: string): Element {
  return createElement(tag, { dangerouslySetInnerHTML: { __html: text } }) as Element;
}

/** Text with a true minus in front of numbers, which is as wide as a plus and not lost at arm's length. */
export function trueMinus(text: string): string {
  return text.replaceAll(/(?<![\w\p{L}])-(?=\d)/gu, "\u2212");
}
