export { type EditedModel, editModel, type ModelChange } from "./edit-model.ts";
export { gatherSource } from "./gather-source.ts";
export { type Located, locate } from "./locate.ts";
export { readModel } from "./read-model.ts";
export type { Place, ReadProjectFile, Refusal, Source, SourceFile } from "./source.ts";
