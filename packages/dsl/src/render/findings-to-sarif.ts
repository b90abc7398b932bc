import { canonicalJson, type Finding } from "@hingeline/core";
import type { FramedPlace } from "./code-frame.ts";

/** What a log of findings says beside them. */
export interface SarifOptions {
  /** The model file as the user named it; undefined for standard input. */
  readonly model: string | undefined;
  /** Where findings are written, by their address; the others stand on the file as a whole. */
  readonly places?: ReadonlyMap<string, FramedPlace>;
  /** Version of hingeline. */
  readonly version: string;
  /** A committed plan that is no longer the model's, and the sentence for it. */
  readonly stale?: { readonly plan: string; readonly message: string };
}

/**
 * Findings as a log in the Static Analysis Results Interchange Format, SARIF 2.1.0 (OASIS Standard, 27 March 2020): one result
 * a finding, its code as the rule, its address as logical location. Columns count UTF-16 units. Ends with a line feed.
 */
export function findingsToSarif(findings: readonly Finding[], options: SarifOptions): string {
  const rules = new Map<string, object>();
  const ruleIndexOf = (id: string, level: string) => {
    if (!rules.has(id)) rules.set(id, { id, defaultConfiguration: { level } });
    return [...rules.keys()].indexOf(id);
  };
  const results: object[] = findings.map(({ code, severity, at, message, do: remedy, numbers }) => ({
    ruleId: code,
    ruleIndex: ruleIndexOf(code, severity),
    level: severity,
    message: { text: remedy === "" ? message : `${message} ${remedy}` },
    locations: [locationOf(at, options)],
    partialFingerprints: { "codeAndAddress/v1": `${code} ${at}` },
    properties: { numbers },
  }));
  if (options.stale !== undefined) {
    const { plan, message } = options.stale;
    results.push({
      ruleId: staleRule,
      ruleIndex: ruleIndexOf(staleRule, "error"),
      level: "error",
      message: { text: message },
      locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(plan) }, region: firstLine } }],
      partialFingerprints: { "codeAndAddress/v1": staleRule },
    });
  }
  const { version } = options;
  const log = {
    $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: { driver: { name: "hingeline", version, rules: [...rules.values()] } },
        // A forge keeps the logs of several models apart by this.
        automationDetails: { id: `hingeline/${slashed(options.model ?? "model")}/` },
        columnKind: "utf16CodeUnits",
        results,
      },
    ],
  };
  return `${canonicalJson(log)}\n`;
}

const staleRule = "plan-stale";

/** What has no line of its own is shown at the top of its file. */
const firstLine = { startLine: 1 };

function locationOf(at: string, { model, places }: SarifOptions): object {
  const place = places?.get(at);
  // A file that does not compile has no addresses: its findings are named by their place.
  const isPlace = place !== undefined && at === `${place.file}:${place.line}:${place.column}`;
  const logical = at === "" || isPlace ? {} : { logicalLocations: [{ fullyQualifiedName: at }] };
  if (place === undefined)
    return model === undefined
      ? logical
      : { physicalLocation: { artifactLocation: { uri: uriOf(model) }, region: firstLine }, ...logical };
  const { file, line, column, endLine, endColumn, sourceLine } = place;
  return {
    physicalLocation: {
      artifactLocation: { uri: uriOf(file) },
      region: { startLine: line, startColumn: column, endLine, endColumn },
      contextRegion: { startLine: line, snippet: { text: sourceLine } },
    },
    ...logical,
  };
}

/** A path as the reference that a URI takes it by (RFC 3986, RFC 8089); a relative one stays relative. */
function uriOf(path: string): string {
  const [, drive = "", rest = ""] = /^([A-Za-z]:(?=\/))?(.*)$/s.exec(slashed(path)) ?? [];
  const uri = rest.split("/").map(encodeURIComponent).join("/");
  if (drive !== "") return `file:///${drive}${uri}`;
  return rest.startsWith("/") ? `file://${uri}` : uri;
}

/** A path with "/" on every system. */
function slashed(path: string): string {
  return path.replaceAll("\\", "/");
}
