import type { Readable, Writable } from "node:stream";
import type { Prompt } from "./prompt.ts";

/** Questions at a terminal. The library that draws them is loaded at the first one. */
export function terminalPrompt(input: Readable, output: Writable): Prompt {
  return {
    ask: async (message, problemWith) => {
      const { isCancel, text } = await import("@clack/prompts");
      const line = await text({
        message,
        input,
        output,
        // The side line of the library has no room at 80 columns.
        withGuide: false,
        validate: (typed) => problemWith(typed ?? ""),
      });
      return isCancel(line) ? undefined : (line ?? "");
    },
  };
}
