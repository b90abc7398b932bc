import { deg, type Model, mm, pct, us } from "@hingeline/core";

/** Names that try to be markup, end an attribute, turn the writing round, or never end. */
export const hostileNames = {
  model: "</title><script>window.hurt = 1</script>",
  radio: "\"><img src=x onerror='window.hurt = 1'>",
  left: "<b>leftFlap</b> & \"co\" 'x'",
  right: "<b>rightFlap</b> & \"co\" 'x'",
  hebrew: "מדף אחורי",
  long: "W".repeat(200),
  control: "</script><script>window.hurt = 1</script>",
  detent: "{{constructor}} #{window.hurt = 1} -->",
  turned: "safe\u202Etxet",
} as const;

const bench = {
  up: us(1890),
  level: us(1872),
  down: us(1208),
  readings: [
    [us(1890), deg(-1.2)],
    [us(1872), deg(0)],
    [us(1440), deg(26)],
    [us(1208), deg(38.5)],
  ] as const,
};

/** A sound model, all of whose names are hostile. */
export const hostileModel: Model = {
  format: "hingeline/model",
  version: 1,
  name: hostileNames.model,
  radio: {
    name: hostileNames.radio,
    centre: us(1500),
    per100: us(512),
    reach: pct(125),
    step: pct(0.1),
    endPoints: "clamp",
    curvePoints: 0,
  },
  surfaces: {
    [hostileNames.left]: { chord: mm(60), servo: { channel: 1, label: hostileNames.turned, bench } },
    [hostileNames.right]: { chord: mm(60), servo: { channel: 2, label: hostileNames.long, bench } },
    [hostileNames.hebrew]: { servo: { channel: 3, bench } },
    [hostileNames.long]: { servo: { channel: 4, bench } },
  },
  groups: {
    [hostileNames.turned]: {
      kind: "matched",
      surfaces: [hostileNames.left, hostileNames.right],
      within: deg(1),
    },
  },
  controls: {
    [hostileNames.control]: { kind: "selector", detents: ["stowed", hostileNames.detent, hostileNames.long] },
  },
  moves: {
    [hostileNames.control]: {
      stowed: { [hostileNames.turned]: deg(0), [hostileNames.hebrew]: deg(0), [hostileNames.long]: deg(0) },
      [hostileNames.detent]: {
        [hostileNames.turned]: deg(15),
        [hostileNames.hebrew]: deg(9),
        [hostileNames.long]: deg(8),
      },
      [hostileNames.long]: {
        [hostileNames.turned]: deg(30),
        [hostileNames.hebrew]: deg(20),
        [hostileNames.long]: deg(30),
      },
    },
  },
};
