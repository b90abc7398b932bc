/** The source of a model to begin with: two flaps that must agree, of an aeroplane that does not exist. */
export const starterModel = `import { deg, matched, model, pct, selector, us } from "@hingeline/dsl";

// A model to begin with. The aeroplane is invented: replace every number by what you measured before you enter anything.
// Pulses are in microseconds at the servo's own lead. Deflections are in degrees, positive trailing edge down.
export default model("Larkmead 15 (starter, nothing measured)", {
  // How your transmitter's percent and the pulse at the receiver belong together: measure it at the receiver.
  radio: {
    name: "my radio",
    centre: us(1500), // pulse at 0 percent
    per100: us(500), // pulse span of 100 percent
    reach: pct(125), // the largest percent it takes
    step: pct(1), // the smallest it can be changed by
    endPoints: "clamp", // "clamp": limits cut the output; "scale": limits stretch it
    curvePoints: 0, // points of an output's curve, 0 for none
  },
  instruments: { pulse: us(1), deflection: deg(0.2) }, // by how much a reading may be off
  surfaces: {
    flapLeft: {
      servo: {
        channel: 5,
        bench: {
          // The last pulses at which all is well: nothing is ever sent past them.
          up: us(1722),
          level: us(1700),
          down: us(1190),
          readings: [
            [us(1700), deg(0)],
            [us(1580), deg(9.6)],
            [us(1450), deg(18.7)],
            [us(1320), deg(26.6)],
            [us(1190), deg(33.4)],
          ],
        },
      },
    },
    flapRight: {
      servo: {
        channel: 6,
        bench: {
          up: us(1284),
          level: us(1306),
          down: us(1822),
          readings: [
            [us(1306), deg(0)],
            [us(1425), deg(9.4)],
            [us(1555), deg(18.5)],
            [us(1690), deg(26.7)],
            [us(1822), deg(33.6)],
          ],
        },
      },
    },
  },
  groups: { flaps: matched(["flapLeft", "flapRight"], { within: deg(1) }) },
  controls: { flap: selector("up", "takeoff", "landing") }, // the first is where it rests
  moves: {
    flap: {
      up: { flaps: deg(0) },
      takeoff: { flaps: deg(12) },
      landing: { flaps: deg(30) },
    },
  },
  failsafe: { flap: "takeoff" }, // where the flaps go at loss of signal
});
`;
