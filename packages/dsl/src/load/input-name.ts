/** What a person calls the file of this name; "-" is standard input. Begins a sentence. */
export function inputName(path: string): string {
  return path === "-" ? "Standard input" : path;
}
