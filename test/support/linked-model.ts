import {
  atPart,
  ballRod,
  deg,
  degPerUs,
  matched,
  mm,
  model,
  pct,
  pushrod,
  s,
  selector,
  stick,
  us,
} from "@hingeline/dsl";

const servoType = { rotation: degPerUs(0.073) };

/** A model with a plane linkage, one in space, two servos on one surface, a bench without readings and a correction curve. */
export default model("Wrenfield test rig", {
  radio: {
    name: "field set",
    centre: us(1500),
    per100: us(512),
    reach: pct(125),
    step: pct(0.1),
    endPoints: "clamp",
    curvePoints: 5,
  },
  surfaces: {
    flapLeft: {
      chord: mm(62),
      servo: {
        channel: 5,
        type: servoType,
        turns: "anticlockwise",
        bench: {
          up: us(1890),
          level: us(1872),
          down: us(1208),
          readings: [
            [us(1890), deg(-1.2)],
            [us(1872), deg(0)],
            [us(1655), deg(13.5)],
            [us(1440), deg(26)],
            [us(1208), deg(38.5)],
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
      servo: {
        channel: 6,
        type: servoType,
        turns: "clockwise",
        bench: {
          up: us(1110),
          level: us(1128),
          down: us(1792),
          readings: [
            [us(1110), deg(-1.1)],
            [us(1128), deg(0)],
            [us(1345), deg(13.2)],
            [us(1560), deg(25.8)],
            [us(1792), deg(38.3)],
          ],
        },
        linkage: ballRod({
          shaft: { through: [mm(0), mm(0), mm(0)], along: [mm(0), mm(1), mm(0)] },
          armBall: [mm(-1), mm(6), mm(11)],
          hinge: { through: [mm(48), mm(0), mm(-2)], along: [mm(0.05), mm(1), mm(0)] },
          hornBall: [mm(46), mm(12), mm(11)],
        }),
      },
    },
    rudder: {
      servos: {
        upper: {
          channel: 4,
          bench: {
            up: us(1180),
            level: us(1504),
            down: us(1828),
            readings: [
              [us(1180), deg(-24.2)],
              [us(1340), deg(-12.2)],
              [us(1504), deg(0.1)],
              [us(1668), deg(11.2)],
              [us(1828), deg(21.4)],
            ],
          },
        },
        lower: {
          channel: 8,
          bench: {
            up: us(1150),
            level: us(1480),
            down: us(1836),
            readings: [
              [us(1150), deg(-21.3)],
              [us(1318), deg(-10.7)],
              [us(1478), deg(-0.1)],
              [us(1652), deg(12.1)],
              [us(1836), deg(25.3)],
            ],
          },
        },
      },
    },
    hatch: { servo: { channel: 7, bench: { level: us(1100), down: us(1900) } } },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) },
  controls: {
    flap: selector("stowed", "takeoff", "landing"),
    yaw: stick({ trim: pct(5) }),
    door: selector("shut", "open"),
  },
  moves: {
    flap: { stowed: { flaps: deg(0) }, takeoff: { flaps: deg(15) }, landing: { flaps: deg(36) } },
    yaw: { rudder: [deg(-18), deg(18)] },
    door: { shut: { hatch: atPart(0) }, open: { hatch: atPart(0.9) } },
  },
  transit: { flap: s(2.5) },
  failsafe: { flap: "takeoff" },
});
