import type { Finding } from "@hingeline/core";
import { locateFindings } from "../load/locate-findings.ts";
import { codeFrame } from "../render/code-frame.ts";
import type { Frames } from "../render/findings-to-text.ts";
import type { Io } from "./io.ts";

const remarks = { exact: "", computed: "(computed here)", around: "(within this)" };

/** For the findings of a model file, the lines of it that they are about. */
export async function frameFindings(model: string, findings: readonly Finding[], io: Io): Promise<Frames> {
  const places = await locateFindings(model, findings, io);
  return new Map([...places].map(([at, place]) => [at, codeFrame(place, { remark: remarks[place.stands] })]));
}
