import { smallModel } from "./small-model.ts";

const point = [1, 2, 3];
const axis = { through: point, along: [0, 1, 0] };
const track = {
  kind: "track",
  arm: 17,
  armAt: 40,
  base: 100,
  rise: 2,
  aside: 1,
  trackAt: -6,
  travel: 34,
  rod: 90,
};

/** The JSON form of a model that has every part that a model can have, sound in form, not in sense; new each time. */
export function fullModel() {
  const links = [
    { kind: "pushrod", arm: 11, horn: 13, base: 48, rise: -2, armAt: 95, hornAt: 100, rod: 50 },
    { kind: "ballRod", shaft: axis, armBall: point, hinge: axis, hornBall: point, rod: 50 },
    { kind: "bentRod", bend: 30, tipTo: "port", skew: 5 },
    { ...track, cam: { kind: "powers", length: 34, terms: [{ deflection: 4, power: 1 }] } },
    {
      ...track,
      cam: {
        kind: "table",
        points: [
          [0, 0],
          [34, 30],
        ],
      },
    },
    { kind: "torqueRod", sense: "opposite" },
    { kind: "cables", arm: 12, horn: 14, base: 400, armAft: 1, hornAft: 2, crossed: true },
  ];
  const stop = { kind: "stop", pulse: 1100, reason: "contact", current: 0.4 };
  const servo = {
    channel: 1,
    yLead: true,
    label: "A7",
    type: {
      torque: 0.4,
      speed: 400,
      rotation: 0.09,
      deadBand: 3,
      ratedAt: 6,
      stallCurrent: 2,
      analogue: true,
      accepts: [900, 2100],
    },
    added: 20,
    turns: "clockwise",
    bench: {
      up: stop,
      level: 1500,
      down: 1900,
      guard: 4,
      readings: [
        [1500, 0],
        [1600, 8, "out"],
        [1700, { kind: "throw", mm: 12 }],
        [1900, { kind: "extension", mm: 20 }, "back"],
      ],
      freeCurrent: 0.2,
      measured: { on: "2025-06-30", supply: 6, temperature: 20 },
    },
    rod: { material: "carbon", along: "hardwood", diameter: 2, bore: 1, length: 90, ends: "fixedPinned" },
    holds: { horn: 180 },
    linkage: { kind: "chain", links },
  };
  const surface = {
    chord: 62,
    section: 240,
    hingeMoment: { byIncidence: -0.007, byDeflection: -0.012 },
    incidence: 8,
    inertia: 0.0002,
    span: 540,
    trailingEdgeRise: 1,
    throwBy: "vertical",
    hinge: { sweep: 3, tilt: 5 },
    freePlay: 0.3,
    reserve: { up: 5, down: 5 },
    allowed: [-20, 30],
  };
  const small = smallModel();
  return {
    ...small,
    radio: {
      ...small.radio,
      per100: { below: 500, above: 512 },
      leastLimit: 20,
      curveSpacing: "equal",
      frame: 0.02,
      powerUp: 1500,
    },
    instruments: { pulse: 1, deflection: 0.2, throw: 0.5, meter: "gravity" },
    surfaces: {
      flap: { ...surface, servo },
      tab: { ...surface, servo: { channel: 2, bench: { level: 1500, down: 1900 } } },
      rudder: { servos: { upper: { channel: 3, bench: { level: 1500, down: 1900 } } } },
    },
    groups: {
      both: { kind: "together", surfaces: ["flap", "tab"] },
      flaps: { kind: "matched", surfaces: ["flap", "tab"], within: 1 },
    },
    controls: { ...small.controls, roll: { kind: "stick", trim: 10, rests: -1 } },
    moves: {
      gear: {
        up: { flap: 0, tab: { kind: "pulse", us: 1600 } },
        down: { flap: { kind: "part", part: 0.5 }, tab: { kind: "throw", mm: 4 } },
      },
      roll: { flap: [-3, 3] },
      phase: { per: "gear", cases: { up: {}, down: { flap: [-1, { kind: "extension", mm: 3 }] } } },
    },
    yields: { "rudder.upper": ["gear"] },
    transit: { gear: 2 },
    airspeed: { otherwise: 34, gear: { down: 17 }, roll: 30 },
    field: { height: 500, temperature: 10 },
    temperatures: [-5, 30],
    supply: { voltage: 6, current: 5 },
    failsafe: { gear: "down", roll: 0 },
  };
}
