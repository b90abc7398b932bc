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
  selector,
  stick,
  us,
} from "@hingeline/dsl";

const servo = { torque: nm(0.35), speed: degPerS(667), rotation: degPerUs(0.0902), deadBand: us(3) };
const elevon = { chord: mm(51), span: mm(460), allowed: [deg(-22), deg(22)] } as const;

// An invented delta of 1.3 m: two elevons that are elevator and aileron at once, with a little reflex at rest. Full up elevator and full
// aileron together ask six degrees more than is allowed; the elevator keeps, the aileron gives way on that side.
export default model("Slatewing 13", {
  radio: {
    name: "club set",
    centre: us(1520),
    per100: us(400),
    reach: pct(150),
    step: pct(0.5),
    endPoints: "scale",
    curvePoints: 0,
  },
  instruments: { pulse: us(1), deflection: deg(0.2) },
  surfaces: {
    elevonLeft: {
      ...elevon,
      servo: {
        channel: 1,
        type: servo,
        bench: {
          up: us(1865),
          level: us(1540),
          down: us(1200),
          readings: [
            [us(1200), deg(23.6)],
            [us(1370), deg(11.8)],
            [us(1537), deg(0.2)],
            [us(1705), deg(-12.5)],
            [us(1865), deg(-24.5)],
          ],
        },
      },
    },
    elevonRight: {
      ...elevon,
      servo: {
        channel: 2,
        type: servo,
        bench: {
          up: us(1135),
          level: us(1469),
          down: us(1800),
          readings: [
            [us(1135), deg(-24.4)],
            [us(1300), deg(-12.4)],
            [us(1468), deg(-0.1)],
            [us(1640), deg(12.2)],
            [us(1800), deg(23.4)],
          ],
        },
      },
    },
  },
  groups: { elevons: matched(["elevonLeft", "elevonRight"], { within: deg(1) }) },
  controls: { mode: selector("normal"), pitch: stick(), roll: stick() },
  moves: {
    mode: { normal: { elevons: deg(-2) } },
    pitch: { elevons: [deg(-14), deg(14)] },
    roll: { elevonLeft: [deg(-12), deg(12)], elevonRight: [deg(12), deg(-12)] },
  },
  yields: { elevons: ["roll"] },
  airspeed: { otherwise: mps(45), pitch: mps(28), roll: mps(28) },
  failsafe: {},
});
