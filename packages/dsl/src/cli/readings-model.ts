import type { TableReading } from "../measure/read-readings.ts";

/** Letters that can stand as a key without quotes, and for one of several servos a dot and its own name. */
const servoName = /^[A-Za-z]\w{0,39}(?:\.[A-Za-z]\w{0,39})?$/;

/** A servo's bench as far as readings tell it. */
interface ReadBench {
  readonly levelUs: number;
  /** Level was not crossed: the reading nearest to it stands for it. */
  readonly isNearest: boolean;
  readonly upUs?: number;
  readonly downUs: number;
  readonly readings: readonly TableReading[];
}

/**
 * The source of a model made of bench readings, laid out as the formatter would; or a sentence for why there is none. What
 * readings cannot tell (radio, channels, moves) stands there to be replaced, and says so.
 * @param title the model's name
 */
export function readingsModel(
  readings: readonly TableReading[],
  title: string,
): { readonly source: string } | { readonly problem: string } {
  const servos = new Map<string, TableReading[]>();
  for (const reading of readings) {
    const name = reading.servo === "" ? "surface" : reading.servo;
    if (!servoName.test(name))
      return {
        problem: `"${name}" is no name of a servo: begin with a letter, then letters, digits and _; rudder.upper for one of several on a surface.`,
      };
    servos.set(name, [...(servos.get(name) ?? []), reading]);
  }
  const surfaces = new Map<string, Map<string, ReadBench>>();
  for (const [name, list] of servos) {
    const [surface = "", part = ""] = name.split(".");
    const bench = benchOf(list);
    if (typeof bench === "string") return { problem: `${name} ${bench}` };
    surfaces.set(surface, (surfaces.get(surface) ?? new Map<string, ReadBench>()).set(part, bench));
  }
  const both = [...surfaces].find(([, parts]) => parts.has("") && parts.size > 1);
  if (both !== undefined)
    return { problem: `"${both[0]}" has readings of its own and of several servos; name every servo of it.` };
  return { source: writeSource(surfaces, title) };
}

/** A bench, or what the servo lacks. */
function benchOf(readings: readonly TableReading[]): ReadBench | string {
  const byDeflection = [...readings].sort((a, b) => a.deflectionDeg - b.deflectionDeg);
  const [lowest, highest] = [byDeflection[0], byDeflection.at(-1)];
  if (
    lowest === undefined ||
    highest === undefined ||
    lowest.pulseUs === highest.pulseUs ||
    lowest.deflectionDeg === highest.deflectionDeg
  )
    return "needs readings at two pulses at least, and different deflections there.";
  const after = byDeflection.findIndex(({ deflectionDeg }) => deflectionDeg >= 0);
  const [below, above] = [byDeflection[after - 1], byDeflection[after]];
  const nearest = byDeflection.reduce((best, one) =>
    Math.abs(one.deflectionDeg) < Math.abs(best.deflectionDeg) ? one : best,
  );
  const isExact = nearest.deflectionDeg === 0;
  const isCrossed = below !== undefined && above !== undefined;
  const levelUs = isExact || !isCrossed ? nearest.pulseUs : crossing(below, above);
  const [upUs, downUs] = [lowest.pulseUs, highest.pulseUs];
  if (downUs === levelUs) return "was not read below level; a model needs its stop down.";
  return {
    levelUs,
    isNearest: !isExact && !isCrossed,
    // A surface that was read down only.
    ...(upUs === levelUs ? {} : { upUs }),
    downUs,
    readings,
  };
}

/** Where the straight line between two readings is level, whole microseconds. */
function crossing(below: TableReading, above: TableReading): number {
  const share = below.deflectionDeg / (below.deflectionDeg - above.deflectionDeg);
  return Math.round(below.pulseUs + share * (above.pulseUs - below.pulseUs));
}

function writeSource(surfaces: ReadonlyMap<string, ReadonlyMap<string, ReadBench>>, title: string): string {
  let channel = 0;
  const servoLines = (key: string, bench: ReadBench, indent: string): string[] => {
    channel += 1;
    return [`${key}: {`, `  channel: ${channel},`, ...benchLines(bench), "},"].map((line) => indent + line);
  };
  const surfaceLines = [...surfaces].flatMap(([name, parts]) => {
    const only = parts.get("");
    const inside =
      only === undefined
        ? [
            "      servos: {",
            ...[...parts].flatMap(([part, bench]) => servoLines(part, bench, "        ")),
            "      },",
          ]
        : servoLines("servo", only, "      ");
    return [`    ${name}: {`, ...inside, "    },"];
  });
  return `${[
    'import { deg, model, pct, selector, us } from "@hingeline/dsl";',
    "",
    "// Made of bench readings. Replace what they cannot tell: the radio, the channels, the controls and what they move.",
    "// Pulses are in microseconds at the servo's own lead. Deflections are in degrees, positive trailing edge down.",
    `export default model(${JSON.stringify(title)}, {`,
    "  // Not measured: how your transmitter's percent and the pulse at the receiver belong together.",
    "  radio: {",
    '    name: "my radio",',
    "    centre: us(1500), // pulse at 0 percent",
    "    per100: us(500), // pulse span of 100 percent",
    "    reach: pct(125), // the largest percent it takes",
    "    step: pct(1), // the smallest it can be changed by",
    '    endPoints: "clamp", // "clamp": limits cut the output; "scale": limits stretch it',
    "    curvePoints: 0, // points of an output's curve, 0 for none",
    "  },",
    "  surfaces: {",
    ...surfaceLines,
    "  },",
    '  controls: { position: selector("level") }, // add the detents that you want',
    "  moves: {",
    "    position: {",
    "      level: {",
    ...[...surfaces.keys()].map((name) => `        ${name}: deg(0),`),
    "      },",
    "    },",
    "  },",
    "});",
  ].join("\n")}\n`;
}

function benchLines({ upUs, levelUs, isNearest, downUs, readings }: ReadBench): string[] {
  return [
    "  bench: {",
    "    // The outermost readings: set here the last pulses at which all was well.",
    ...(upUs === undefined ? [] : [`    up: us(${upUs}),`]),
    `    level: us(${levelUs}), // ${isNearest ? "the reading nearest to level: measure it" : "where the readings are level"}`,
    `    down: us(${downUs}),`,
    "    readings: [",
    ...readings.map(({ pulseUs, deflectionDeg, way }) => {
      const marked = way === undefined ? "" : `, "${way}"`;
      return `      [us(${pulseUs}), deg(${deflectionDeg})${marked}],`;
    }),
    "    ],",
    "  },",
  ];
}
