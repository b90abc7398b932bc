import {
  amps,
  deg,
  degPerS,
  degPerUs,
  matched,
  mm,
  model,
  mps,
  nm,
  pct,
  s,
  selector,
  stick,
  stopAt,
  us,
  volts,
} from "@hingeline/dsl";

const flapServo = {
  torque: nm(1.37),
  ratedAt: volts(6),
  stallCurrent: amps(3.1),
  speed: degPerS(375),
  rotation: degPerUs(0.0912),
  deadBand: us(2),
};
const smallServo = {
  torque: nm(1.2),
  ratedAt: volts(6),
  stallCurrent: amps(2.8),
  speed: degPerS(428.6),
  rotation: degPerUs(0.0905),
  deadBand: us(2),
};

// An invented tow plane of 2.6 m: drop-hinged flaps whose level lies far from the centre pulse, steep there and shallow at
// full flap. The readings are made up from a linkage with a scatter of 0.15 to 0.25 degrees.
export default model("Bramblehook 26", {
  radio: {
    name: "desk set",
    centre: us(1500),
    per100: us(500),
    reach: pct(125),
    step: pct(1),
    endPoints: "clamp",
    curvePoints: 0,
  },
  instruments: { pulse: us(1), deflection: deg(0.2), throw: mm(0.5) },
  surfaces: {
    flapLeft: {
      chord: mm(96),
      trailingEdgeRise: mm(14),
      span: mm(620),
      hingeMoment: { byIncidence: -0.006, byDeflection: -0.012 },
      servo: {
        channel: 5,
        label: "F-L-07",
        type: flapServo,
        turns: "anticlockwise",
        bench: {
          up: stopAt(us(1880), "contact"),
          level: us(1859),
          down: stopAt(us(1172), "contact"),
          guard: us(10),
          readings: [
            [us(1880), deg(-2.5)],
            [us(1857), deg(0.2)],
            [us(1765), deg(8.6)],
            [us(1660), deg(16.8)],
            [us(1535), deg(25.2)],
            [us(1395), deg(33.5)],
            [us(1270), deg(40.4)],
            [us(1172), deg(44.6)],
          ],
        },
      },
    },
    flapRight: {
      chord: mm(96),
      trailingEdgeRise: mm(14),
      span: mm(620),
      hingeMoment: { byIncidence: -0.006, byDeflection: -0.012 },
      servo: {
        channel: 6,
        label: "F-R-03",
        type: flapServo,
        turns: "clockwise",
        bench: {
          up: stopAt(us(1132), "contact"),
          level: us(1154),
          down: stopAt(us(1838), "contact"),
          guard: us(10),
          readings: [
            [us(1132), deg(-2.2)],
            [us(1151), deg(-0.3)],
            [us(1240), deg(8.1)],
            [us(1350), deg(16.5)],
            [us(1472), deg(24.9)],
            [us(1612), deg(33)],
            [us(1740), deg(39.9)],
            [us(1838), deg(44.5)],
          ],
        },
      },
    },
    aileronLeft: {
      servo: {
        channel: 1,
        type: smallServo,
        bench: {
          up: us(1850),
          level: us(1523),
          down: us(1210),
          guard: us(10),
          readings: [
            [us(1210), deg(21.3)],
            [us(1360), deg(11.2)],
            [us(1522), deg(0.1)],
            [us(1690), deg(-12.1)],
            [us(1850), deg(-23.1)],
          ],
        },
      },
    },
    aileronRight: {
      servo: {
        channel: 3,
        type: smallServo,
        bench: {
          up: us(1165),
          level: us(1484),
          down: us(1800),
          guard: us(10),
          readings: [
            [us(1165), deg(-22.4)],
            [us(1325), deg(-11.2)],
            [us(1486), deg(0.2)],
            [us(1650), deg(11.6)],
            [us(1800), deg(21.6)],
          ],
        },
      },
    },
    elevator: {
      servo: {
        channel: 2,
        type: smallServo,
        bench: {
          up: us(1180),
          level: us(1513),
          down: us(1850),
          guard: us(10),
          readings: [
            [us(1180), deg(-21.3)],
            [us(1340), deg(-11.4)],
            [us(1512), deg(-0.1)],
            [us(1690), deg(11.8)],
            [us(1850), deg(22.2)],
          ],
        },
      },
    },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(0.5) }) },
  controls: {
    flap: selector("level", "tow", "takeoff", "landing"),
    pitch: stick({ trim: pct(4) }),
    roll: stick({ trim: pct(4) }),
  },
  moves: {
    flap: {
      level: { flaps: deg(0) },
      tow: { flaps: deg(6) },
      takeoff: { flaps: deg(14) },
      landing: { flaps: deg(42), elevator: deg(2) },
    },
    pitch: { elevator: [deg(-18), deg(16)] },
    roll: { aileronLeft: [deg(-20), deg(14)], aileronRight: [deg(14), deg(-20)] },
  },
  transit: { flap: s(3) },
  airspeed: { otherwise: mps(36), flap: { tow: mps(18), takeoff: mps(20), landing: mps(20) } },
  supply: { voltage: volts(6), current: amps(10) },
  failsafe: { flap: "takeoff" },
});
