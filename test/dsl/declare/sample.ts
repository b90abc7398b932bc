import {
  atThrow,
  ballRod,
  deg,
  degPerS,
  degPerUs,
  matched,
  mm,
  model,
  mps,
  nm,
  pct,
  per,
  pushrod,
  s,
  selector,
  stick,
  us,
} from "@hingeline/dsl";

const wingServo = { torque: nm(0.45), speed: degPerS(500), rotation: degPerUs(0.09), deadBand: us(3) };

/** The tug of the design, every part of it filled in. */
export default model("Heronswood tug", {
  radio: {
    name: "field set",
    centre: us(1500),
    per100: us(512),
    reach: pct(125),
    step: pct(0.1),
    endPoints: "clamp",
    curvePoints: 5,
  },
  instruments: { pulse: us(1), deflection: deg(0.2), throw: mm(0.5) },
  surfaces: {
    flapLeft: {
      chord: mm(62),
      span: mm(540),
      servo: {
        channel: 5,
        type: wingServo,
        turns: "anticlockwise",
        bench: {
          up: us(1890),
          level: us(1872),
          down: us(1208),
          readings: [
            [us(1872), deg(0)],
            [us(1655), deg(13.5)],
            [us(1440), atThrow(mm(29))],
            [us(1215), deg(41)],
          ],
        },
        linkage: pushrod({
          arm: mm(11),
          horn: mm(13),
          base: mm(48),
          rise: mm(-2),
          armAt: deg(95),
          hornAt: deg(100),
        }),
      },
    },
    flapRight: {
      chord: mm(62),
      span: mm(540),
      servo: {
        channel: 6,
        type: wingServo,
        turns: "clockwise",
        bench: { up: us(1112), level: us(1130), down: us(1794) },
        linkage: ballRod({
          shaft: { through: [mm(0), mm(0), mm(0)], along: [mm(0), mm(1), mm(0)] },
          armBall: [mm(-1), mm(0), mm(11)],
          hinge: { through: [mm(48), mm(0), mm(-2)], along: [mm(0), mm(1), mm(0)] },
          hornBall: [mm(46), mm(0), mm(11)],
        }),
      },
    },
    elevator: { servo: { channel: 2, bench: { up: us(1080), level: us(1507), down: us(1910) } } },
    rudder: {
      servos: {
        upper: { channel: 4, bench: { up: us(1110), level: us(1490), down: us(1900) } },
        lower: { channel: 8, bench: { up: us(1120), level: us(1500), down: us(1890) } },
      },
    },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) },
  controls: {
    flap: selector("stowed", "takeoff", "landing"),
    phase: selector("cruise", "thermal"),
    pitch: stick({ trim: pct(10) }),
    roll: stick(),
  },
  moves: {
    flap: {
      stowed: { flaps: deg(0) },
      takeoff: { flaps: deg(15), elevator: deg(-0.8) },
      landing: { flaps: deg(38), elevator: deg(-2) },
    },
    pitch: { elevator: [deg(-16), deg(14)] },
    roll: per("phase", { cruise: {}, thermal: { flaps: [deg(-3), deg(3)] } }),
  },
  transit: { flap: s(2.5) },
  airspeed: { otherwise: mps(34), flap: { landing: mps(17) } },
  failsafe: { flap: "takeoff" },
});
