import { Option } from "commander";
import { parseCount, parseList, parseNumber, parsePositive, parseUpTo } from "./parse-number.ts";

/** The options of `size`, as SizeArgs names them. */
export function sizeOptions(): readonly Option[] {
  const option = <T>(flags: string, description: string, parse: (text: string) => T) =>
    new Option(flags, description).argParser(parse);
  const required = <T>(flags: string, description: string, parse: (text: string) => T) =>
    option(flags, description, parse).makeOptionMandatory();
  const holes = parseList(parsePositive);
  const angles = parseList(parseNumber);
  return [
    option("--servo <name>", "with a model: the servo from which to take what is not given here", String),
    option("--base <mm>", "from the servo's shaft aft to the hinge", parseNumber),
    option("--rise <mm>", "from the shaft up to the hinge, negative if it lies below", parseNumber),
    option("--up <deg>", "deflection to reach, trailing edge up", parseUpTo(180)),
    option("--down <deg>", "deflection to reach, trailing edge down", parseUpTo(180)),
    required("--arm-holes <mm,...>", "holes of the servo's arm, from its shaft", holes),
    required("--horn-holes <mm,...>", "holes of the horn, from the hinge", holes),
    option("--teeth <number>", "teeth of the shaft: the arm can stand at any", parseCount),
    option(
      "--arm-at <deg,...>",
      "angles of the arm with the servo at its middle, from aft (0) through up (90); with --teeth, one of them (default with --teeth: 90)",
      angles,
    ),
    option("--horn-at <deg,...>", "angles of the horn with the surface level", angles).default(
      [90, -90],
      "90,-90",
    ),
    option("--level <deg,...>", "what the servo may be turned from its middle at level", angles).default(
      [0],
      "0",
    ),
    option("--rotation <deg>", "what the servo turns a microsecond", parsePositive),
    required("--travel <deg>", "what the servo turns to either side of its middle", parsePositive),
    option("--least-angle <deg>", "least between the rod and arm or horn", parsePositive).default(20),
    option(
      "--even <weight>",
      "how much as much servo travel up as down counts, 0 to 10",
      parseUpTo(10),
    ).default(0.5),
    option("--most <number>", "how many to print", parseCount).default(10),
  ];
}
