/** A type that no value has, so that the compiler prints the sentence. */
export interface Mistake<Sentence extends string> {
  readonly [sentence]: Sentence;
}
declare const sentence: unique symbol;
