import { visibleText } from "../render/visible-text.ts";
import { hang } from "../render/wrap-text.ts";

/** What a person is told, in lines of 80 columns beside the name of the program; ends with a line feed. */
export function toldText(message: string): string {
  return `${hang("hingeline: ", visibleText(message), 80).join("\n")}\n`;
}
