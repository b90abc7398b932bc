/** The JSON form of a small valid model, new each time, for tests to spoil. */
export function smallModel() {
  return {
    format: "hingeline/model",
    version: 1,
    name: "Wrenfield 20",
    radio: {
      name: "desk set",
      centre: 1500,
      per100: 500,
      reach: 125,
      step: 0.5,
      endPoints: "clamp",
      curvePoints: 0,
    },
    surfaces: {
      flap: {
        servo: {
          channel: 1,
          bench: {
            level: 1500,
            down: 1900,
            readings: [
              [1500, 0],
              [1900, 30],
            ],
          },
          linkage: { kind: "pushrod", arm: 11, horn: 13, base: 48, rise: -2, armAt: 95, hornAt: 100 },
        },
      },
    },
    controls: {
      gear: { kind: "selector", detents: ["up", "down"] },
      phase: { kind: "selector", detents: ["cruise"] },
    },
    moves: { gear: { up: { flap: 0 }, down: { flap: { kind: "part", part: 0.5 } } } },
  };
}
