import {
  atExtension,
  atPart,
  chain,
  deg,
  degPerS,
  degPerUs,
  matched,
  mm,
  model,
  mps,
  nm,
  pct,
  pushrod,
  s,
  selector,
  stick,
  track,
  us,
  volts,
} from "@hingeline/dsl";

const flapServo = { torque: nm(2), speed: degPerS(333), ratedAt: volts(7.4), deadBand: us(2) };
const rudderServo = { torque: nm(1.1), speed: degPerS(400), deadBand: us(2) };

// The carriage runs on a track that falls 6 degrees aft; the flap turns little at first and then ever more: 0.88 u^2.3 of 34 degrees.
const slot = {
  trackAt: deg(-6),
  travel: mm(34.2),
  cam: {
    kind: "powers",
    length: mm(34),
    terms: [
      { deflection: deg(34 * 0.12), power: 1 },
      { deflection: deg(34 * 0.88), power: 2.3 },
    ],
  },
} as const;

// On its track a slotted flap is carried near its middle, so that the air turns it back far less than a hinged one.
const slotted = { byIncidence: -0.003, byDeflection: -0.005 };

// An invented scale twin of 2.9 m with flaps on tracks, one servo and two bell-cranks a side, and one rudder on two servos. Half the
// pulses is 16 mm of carriage and 7 of 34 degrees; the flaps are asked for in millimetres of carriage.
export default model("Corvane 29", {
  radio: {
    name: "desk set",
    centre: us(1500),
    per100: us(500),
    reach: pct(125),
    step: pct(0.1),
    endPoints: "clamp",
    curvePoints: 0,
  },
  instruments: { pulse: us(1), deflection: deg(0.2) },
  surfaces: {
    flapLeft: {
      chord: mm(118),
      span: mm(580),
      hingeMoment: slotted,
      servo: {
        channel: 5,
        type: { ...flapServo, rotation: degPerUs(0.0915) },
        turns: "clockwise",
        bench: {
          up: us(1128),
          level: us(1131),
          down: us(1868),
          readings: [
            [us(1131), atExtension(mm(0))],
            [us(1240), atExtension(mm(4.4))],
            [us(1370), atExtension(mm(10.3))],
            [us(1500), atExtension(mm(16.1))],
            [us(1628), atExtension(mm(22.5))],
            [us(1750), atExtension(mm(28.3))],
            [us(1868), atExtension(mm(33.6))],
          ],
        },
        linkage: chain(
          pushrod({
            arm: mm(17),
            armAt: deg(130),
            base: mm(118),
            rise: mm(-20),
            horn: mm(19),
            hornAt: deg(124),
            rod: mm(119.6),
          }),
          track({ ...slot, arm: mm(34), armAt: deg(122), base: mm(38), rise: mm(30), rod: mm(56) }),
        ),
      },
    },
    flapRight: {
      chord: mm(118),
      span: mm(580),
      hingeMoment: slotted,
      servo: {
        channel: 6,
        type: { ...flapServo, rotation: degPerUs(0.0921) },
        turns: "anticlockwise",
        bench: {
          up: us(1876),
          level: us(1873),
          down: us(1144),
          readings: [
            [us(1876), atExtension(mm(0))],
            [us(1765), atExtension(mm(4.3))],
            [us(1638), atExtension(mm(9.8))],
            [us(1510), atExtension(mm(15.7))],
            [us(1384), atExtension(mm(21.8))],
            [us(1262), atExtension(mm(27.7))],
            [us(1144), atExtension(mm(32.9))],
          ],
        },
        linkage: chain(
          pushrod({
            arm: mm(16.8),
            armAt: deg(131),
            base: mm(118.4),
            rise: mm(-20.2),
            horn: mm(19),
            hornAt: deg(124.5),
            rod: mm(119.9),
          }),
          track({ ...slot, arm: mm(34), armAt: deg(122.5), base: mm(37.6), rise: mm(30.2), rod: mm(55.9) }),
        ),
      },
    },
    rudder: {
      chord: mm(95),
      span: mm(420),
      servos: {
        upper: {
          channel: 4,
          type: { ...rudderServo, rotation: degPerUs(0.09) },
          bench: {
            up: us(1180),
            level: us(1503),
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
          type: { ...rudderServo, rotation: degPerUs(0.0918) },
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
    nosewheel: { servo: { channel: 7, bench: { up: us(1300), level: us(1510), down: us(1720) } } },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) },
  controls: { flap: selector("retracted", "takeoff", "approach", "landing"), yaw: stick() },
  moves: {
    flap: {
      retracted: { flaps: atExtension(mm(0.5)) },
      takeoff: { flaps: atExtension(mm(12)) },
      approach: { flaps: atExtension(mm(18)) },
      landing: { flaps: atExtension(mm(31.5)) },
    },
    yaw: { rudder: [deg(-20), deg(20)], nosewheel: [atPart(-0.6), atPart(0.6)] },
  },
  transit: { flap: s(6) },
  airspeed: {
    otherwise: mps(40),
    flap: { takeoff: mps(26), approach: mps(24), landing: mps(24) },
    yaw: mps(24),
  },
  failsafe: { flap: "takeoff" },
});
