/** A model without a fault, that {@link slips} spoil. */
export const model = `import { deg, matched, mm, model, pct, per, s, selector, stick, us } from "@hingeline/dsl";

export default model("tug", {
  radio: { name: "field set", centre: us(1500), per100: us(512), reach: pct(125), step: pct(0.1),
           endPoints: "clamp", curvePoints: 0 },
  surfaces: {
    flapLeft: { chord: mm(62), servo: { channel: 5, bench: {
      up: us(1890), level: us(1872), down: us(1208),
      readings: [[us(1872), deg(0)], [us(1440), deg(29)], [us(1215), deg(41)]] } } },
    flapRight: { servo: { channel: 6, bench: { level: us(1130), down: us(1800) } } },
    elevator: { servo: { channel: 2, bench: { up: us(1080), level: us(1507), down: us(1910) } } },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) },
  controls: { flap: selector("stowed", "takeoff", "landing"), phase: selector("cruise", "thermal"), pitch: stick() },
  moves: {
    flap: {
      stowed: { flaps: deg(0) },
      takeoff: { flaps: deg(15) },
      landing: { flaps: deg(38), elevator: deg(-2) },
    },
    pitch: { elevator: [deg(-16), deg(14)] },
  },
  transit: { flap: s(2.5) },
  failsafe: { flap: "takeoff" },
});
`;

/** The likeliest slips of a builder: what is wrong, the right text and the wrong one. */
export const slips: readonly (readonly [what: string, right: string, wrong: string])[] = [
  ["a surface misspelt in moves", "elevator: deg(-2)", "elevater: deg(-2)"],
  ["a surface misspelt in a group", '["flapLeft", "flapRight"]', '["flapLeft", "flapRigth"]'],
  ["a control misspelt", "pitch: { elevator", "pitsh: { elevator"],
  ["a detent misspelt", "takeoff: { flaps", "takeof: { flaps"],
  ["a detent missing", "      takeoff: { flaps: deg(15) },\n", ""],
  ["a detent misspelt in failsafe", 'flap: "takeoff"', 'flap: "take-off"'],
  ["a percent where degrees are wanted", "flaps: deg(38)", "flaps: pct(38)"],
  ["millimetres where degrees are wanted", "flaps: deg(38)", "flaps: mm(38)"],
  ["a plain number where degrees are wanted", "flaps: deg(38)", "flaps: 38"],
  ["one place where a stick has two ends", "[deg(-16), deg(14)]", "deg(14)"],
  ["plain numbers at a stick's ends", "[deg(-16), deg(14)]", "[-16, 14]"],
  [
    "detents for a stick",
    "pitch: { elevator: [deg(-16), deg(14)] }",
    "pitch: { up: { elevator: deg(-16) } }",
  ],
  ["two places at a detent", "flaps: deg(38)", "flaps: [deg(38), deg(2)]"],
  ["a reading of three numbers", "[us(1440), deg(29)]", "[us(1440), deg(29), deg(30)]"],
  ["a reading the wrong way round", "[us(1440), deg(29)]", "[deg(29), us(1440)]"],
  ["a reading of plain numbers", "[us(1440), deg(29)]", "[1440, 29]"],
  ["a reading as a text", "[us(1440), deg(29)]", '"1440 29"'],
  ["no level", "up: us(1080), level: us(1507)", "up: us(1080)"],
  ["a stop as a plain number", "up: us(1890)", "up: 1890"],
  ["a channel as a text", "channel: 5", 'channel: "5"'],
  ["no channel", "channel: 6, ", ""],
  ["a key of a bench misspelt", "level: us(1130), down", "level: us(1130), dwon"],
  ["a key of a servo misspelt", "channel: 6, bench", "channel: 6, bensh"],
  ["a key of a surface misspelt", "flapRight: { servo", "flapRight: { sevro"],
  ["a key of the model misspelt", "transit:", "transits:"],
  ["both servo and servos", "flapRight: { ", "flapRight: { servos: {}, "],
  ["a transit without its unit", "s(2.5)", "2.5"],
  ["no step of the radio", " step: pct(0.1),", ""],
  [
    "a selector misspelt in per",
    "pitch: { elevator: [deg(-16), deg(14)] }",
    'pitch: per("phaze", { cruise: {}, thermal: { elevator: [deg(-16), deg(14)] } })',
  ],
];
