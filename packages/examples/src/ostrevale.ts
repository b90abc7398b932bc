import {
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
  together,
  us,
  volts,
} from "@hingeline/dsl";

const hingeMoment = { byIncidence: -0.006, byDeflection: -0.012 };
const flapServo = {
  torque: nm(0.9),
  ratedAt: volts(7.4),
  speed: degPerS(600),
  rotation: degPerUs(0.0922),
  deadBand: us(2),
};
const aileronServo = {
  torque: nm(0.55),
  ratedAt: volts(7.4),
  speed: degPerS(667),
  rotation: degPerUs(0.0905),
  deadBand: us(2),
};
const tailServo = {
  torque: nm(0.45),
  ratedAt: volts(7.4),
  speed: degPerS(600),
  rotation: degPerUs(0.0888),
  deadBand: us(2),
};

const aileron = { chord: mm(38), span: mm(820), hingeMoment, allowed: [deg(-26), deg(22)] } as const;
const flap = { chord: mm(52), span: mm(860), hingeMoment, allowed: [deg(-5), deg(52)] } as const;
const panel = { chord: mm(42), span: mm(300), hingeMoment, allowed: [deg(-20), deg(20)] } as const;

// An invented sailplane of 3.8 m with six servos and a V-tail. Flaps that go down 50 degrees as a brake get steeper the further they
// go; brake and roll together ask more of an aileron than is there, elevator and rudder more of a V-panel.
export default model("Ostrevale 38", {
  radio: {
    name: "field set",
    centre: us(1500),
    per100: us(512),
    reach: pct(125),
    step: pct(0.1),
    endPoints: "clamp",
    curvePoints: 5,
  },
  instruments: { pulse: us(1), deflection: deg(0.2) },
  surfaces: {
    aileronLeft: {
      ...aileron,
      servo: {
        channel: 1,
        type: aileronServo,
        bench: {
          up: us(1908),
          level: us(1551),
          down: us(1185),
          readings: [
            [us(1185), deg(23.8)],
            [us(1300), deg(17.3)],
            [us(1420), deg(9.1)],
            [us(1548), deg(0.2)],
            [us(1680), deg(-9.7)],
            [us(1800), deg(-19.3)],
            [us(1908), deg(-27.8)],
          ],
        },
      },
    },
    aileronRight: {
      ...aileron,
      servo: {
        channel: 2,
        type: aileronServo,
        bench: {
          up: us(1105),
          level: us(1464),
          down: us(1820),
          readings: [
            [us(1105), deg(-27)],
            [us(1215), deg(-18.5)],
            [us(1335), deg(-9.4)],
            [us(1461), deg(-0.2)],
            [us(1585), deg(8.8)],
            [us(1705), deg(16.8)],
            [us(1820), deg(23.9)],
          ],
        },
      },
    },
    flapLeft: {
      ...flap,
      servo: {
        channel: 3,
        type: flapServo,
        bench: {
          up: us(1965),
          level: us(1893),
          down: { kind: "stop", pulse: us(1360), reason: "deadCentre" },
          readings: [
            [us(1965), deg(-5.8)],
            [us(1893), deg(0)],
            [us(1780), deg(10.1)],
            [us(1660), deg(21.4)],
            [us(1540), deg(33.7)],
            [us(1430), deg(46.5)],
            [us(1360), deg(56)],
          ],
        },
      },
    },
    flapRight: {
      ...flap,
      servo: {
        channel: 4,
        type: flapServo,
        bench: {
          up: us(1048),
          level: us(1120),
          down: { kind: "stop", pulse: us(1634), reason: "deadCentre" },
          readings: [
            [us(1048), deg(-5.8)],
            [us(1120), deg(0)],
            [us(1230), deg(10.3)],
            [us(1345), deg(21)],
            [us(1460), deg(33)],
            [us(1565), deg(45.1)],
            [us(1634), deg(54.1)],
          ],
        },
      },
    },
    panelLeft: {
      ...panel,
      servo: {
        channel: 5,
        type: tailServo,
        bench: {
          up: us(1180),
          level: us(1507),
          down: us(1835),
          readings: [
            [us(1180), deg(-20.3)],
            [us(1340), deg(-10.4)],
            [us(1507), deg(0)],
            [us(1670), deg(10.1)],
            [us(1835), deg(20)],
          ],
        },
      },
    },
    panelRight: {
      ...panel,
      servo: {
        channel: 6,
        type: tailServo,
        bench: {
          up: us(1170),
          level: us(1490),
          down: us(1815),
          readings: [
            [us(1170), deg(-20.3)],
            [us(1332), deg(-9.9)],
            [us(1489), deg(-0.1)],
            [us(1655), deg(10.1)],
            [us(1815), deg(20.3)],
          ],
        },
      },
    },
  },
  groups: {
    ailerons: matched(["aileronLeft", "aileronRight"], { within: deg(1) }),
    flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }),
    panels: together(["panelLeft", "panelRight"]),
  },
  controls: {
    camber: selector("cruise", "thermal", "speed"),
    brake: stick({ rests: -1 }),
    pitch: stick(),
    roll: stick(),
    yaw: stick(),
  },
  moves: {
    camber: {
      cruise: {},
      thermal: { flaps: deg(4), ailerons: deg(3) },
      speed: { flaps: deg(-1.5), ailerons: deg(-1.5) },
    },
    brake: { flaps: [deg(0), deg(50)], ailerons: [deg(0), deg(-12)], panels: [deg(0), deg(2.5)] },
    pitch: { panels: [deg(-12), deg(12)] },
    roll: { aileronLeft: [deg(-18), deg(9)], aileronRight: [deg(9), deg(-18)] },
    yaw: { panelLeft: [deg(-12), deg(12)], panelRight: [deg(12), deg(-12)] },
  },
  yields: { ailerons: ["brake"], flaps: ["brake"], panels: ["yaw"] },
  transit: { camber: s(0.8) },
  airspeed: {
    otherwise: mps(35),
    brake: mps(19),
    camber: { thermal: mps(14) },
    roll: mps(25),
    pitch: mps(25),
    yaw: mps(25),
  },
  supply: { voltage: volts(7.4) },
  failsafe: { brake: 1 },
});
