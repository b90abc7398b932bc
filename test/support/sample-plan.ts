import type { Finding, PlanChannel, SetupPlan } from "@hingeline/core";

/** A finding with the least text. */
export function sampleFinding(over: Partial<Finding> = {}): Finding {
  return {
    code: "half-the-pulses",
    severity: "note",
    at: "surfaces.flap.servo",
    message: "Half the pulses are not half the deflection.",
    do: "Nothing to do.",
    numbers: {},
    ...over,
  };
}

/** A channel of one flap with two detents, without any part that is optional. */
export function sampleChannel(over: Partial<PlanChannel> = {}): PlanChannel {
  return {
    channel: 5,
    servos: ["flap"],
    direction: "falling",
    safeUs: [1208, 1890],
    guardUs: [4, 6.5],
    limits: { low: { percent: -57, pulseUs: 1208.16 }, high: { percent: 76.1, pulseUs: 1889.632 } },
    neutral: { percent: 72.7, pulseUs: 1872.224, sharePercent: 94.9 },
    settings: [
      {
        control: "lever",
        detent: "stowed",
        surface: "flap",
        exact: { pulseUs: 1872, percent: 72.65625 },
        enter: { percent: 72.7, pulseUs: 1872.224, addPercent: 0, sharePercent: 94.9 },
      },
      {
        control: "lever",
        detent: "landing",
        surface: "flap",
        exact: { pulseUs: 1268.2, percent: -45.2734375 },
        enter: { percent: -45.2, pulseUs: 1268.576, addPercent: -117.9, sharePercent: -82.3 },
      },
    ],
    extremes: {
      low: { pulseUs: 1268.2, percent: -45.2734375, when: { lever: "landing" } },
      high: { pulseUs: 1872, percent: 72.65625, when: {} },
    },
    failsafe: { percent: 72.7, pulseUs: 1872.224, sharePercent: 94.9 },
    ...over,
  };
}

/** A channel with every part that a plan can have. */
export const fullChannel: PlanChannel = sampleChannel({
  channel: 7,
  servos: ["flapLeft", "rudder.upper"],
  labels: { flapLeft: "F-L-07" },
  direction: "rising",
  curve: [
    { commandPercent: -100, percent: -57, pulseUs: 1208.16, sharePercent: -100 },
    { commandPercent: 0, percent: 12.3, pulseUs: 1562.976, sharePercent: 4.1 },
    { commandPercent: 100, percent: 76.1, pulseUs: 1889.632, sharePercent: 100 },
  ],
  curveWorstDeg: 0.24,
  settings: [
    {
      control: "flap",
      detent: "landing",
      surface: "flapLeft",
      wanted: { deflectionDeg: 38.25, throwMm: 40.43 },
      exact: { pulseUs: 1268.2, percent: -45.2734375 },
      enter: {
        percent: -45.2,
        pulseUs: 1268.576,
        addPercent: -117.9,
        sharePercent: -82.3,
        commandPercent: 92.1,
      },
      gives: { deflectionDeg: 38.23, errorDeg: -0.02, uncertaintyDeg: 0.41 },
    },
    {
      control: "roll",
      stick: -1,
      when: { phase: "thermal" },
      surface: "rudder",
      exact: { pulseUs: 1700, percent: 39.0625 },
      enter: { percent: 39.1, pulseUs: 1700.192, addPercent: 39.1, sharePercent: 44.4 },
    },
  ],
  extremes: {
    low: { pulseUs: 1200, percent: -58.59375, when: { flap: "landing", phase: "thermal", roll: 1.1 } },
    high: { pulseUs: 1880.1, percent: 74.238, when: { flap: "stowed", phase: "cruise", roll: -0.25 } },
  },
  powerUp: { pulseUs: 1500, percent: 0, deflectionDeg: 27.1 },
  doubt: {
    control: "flap",
    detent: "landing",
    uncertaintyDeg: 0.41,
    budget: [
      { cause: "reading", standardDeg: 0.18, share: 0.77 },
      { cause: "freePlay", standardDeg: 0.1, share: 0.23, assumed: { deg: 0.35 } },
    ],
  },
  summed: {
    wantedDeg: 4,
    givesDeg: 6.2,
    errorDeg: 2.2,
    pulseUs: 1310.5,
    when: { flap: "landing", phase: "thermal" },
  },
  transits: [
    {
      control: "flap",
      from: "stowed",
      to: "landing",
      seconds: 2.5,
      secondsPerFullScale: 4.21,
      fastestSeconds: 0.13,
    },
    { control: "phase", from: "cruise", to: "thermal", seconds: 1, secondsPerFullScale: 8 },
  ],
  load: { worstNm: 0.11, heldNm: 0.45, share: 0.244, when: { flap: "landing" }, airspeedMps: 17 },
});

/** A plan of one channel, without findings. */
export function samplePlan(over: Partial<SetupPlan> = {}): SetupPlan {
  return {
    format: "hingeline/setup-plan",
    version: 1,
    model: "Heronswood tug",
    radio: {
      name: "field set",
      centreUs: 1500,
      per100Us: 512,
      reachPercent: 125,
      stepPercent: 0.1,
      endPoints: "clamp",
      curvePoints: 0,
    },
    controls: [{ control: "lever", kind: "selector", detents: ["stowed", "landing"] }],
    channels: [sampleChannel()],
    matches: [],
    gangs: [],
    findings: [],
    procedure: [],
    cautions: ["The pilot decides."],
    ...over,
  };
}

/** A plan with every part that a plan can have, and an error. */
export const fullPlan: SetupPlan = samplePlan({
  controls: [
    { control: "flap", kind: "selector", detents: ["stowed", "landing"] },
    { control: "phase", kind: "selector", detents: ["cruise", "thermal"] },
    { control: "roll", kind: "stick", rests: 0, trimPercent: 10 },
  ],
  radio: {
    name: "field set",
    centreUs: 1500,
    per100Us: { below: 500, above: 512.5 },
    reachPercent: 125,
    stepPercent: 0.1,
    endPoints: "scale",
    curvePoints: 3,
  },
  channels: [fullChannel],
  matches: [
    {
      group: "flaps",
      withinDeg: 1,
      worstDeg: 0.4,
      between: ["stowed", "takeoff"],
      surfaces: ["flapLeft", "flapRight"],
      at: 0.4,
      uncertaintyDeg: 0.52,
    },
  ],
  gangs: [
    {
      surface: "rudder",
      servos: ["rudder.upper", "rudder.lower"],
      points: [
        { deflectionDeg: -20, pulsesUs: [1210, 1775] },
        { deflectionDeg: 0, pulsesUs: [1502.5, 1478.9] },
      ],
      worstDeg: 0.31,
    },
  ],
  findings: [
    sampleFinding(),
    sampleFinding({
      code: "limit-passed",
      severity: "error",
      at: "moves.flap.landing.flapLeft",
      message: "flapLeft needs 1200 us, 8 us past the safe 1208 us (stop down 1204 us, guard 4 us).",
      do: "Do not connect the linkage with this. 37.8 deg is the furthest that is safe.",
    }),
    sampleFinding({ code: "guard-thin", severity: "warning", at: "", message: "A guard is thin." }),
  ],
  procedure: [
    {
      phase: "enter",
      supply: "on",
      linkage: "off",
      text: "Enter the limits of channel 7 before anything else, with the linkages off and the servo's lead out.",
      edits: [
        { channel: 7, set: "limitLow", percent: -57 },
        { channel: 7, set: "direction" },
        { channel: 7, set: "detent", control: "flap", detent: "landing", percent: -45.2, addPercent: -117.9 },
        { channel: 7, set: "transit", control: "flap", seconds: 2.5 },
      ],
      expect: [{ channel: 7, pulseUs: [1495, 1505] }],
      reach: [{ channel: 7, pulseUs: [1208.16, 1889.632] }],
    },
    {
      phase: "connect",
      supply: "off",
      linkage: "on",
      text: "Connect the linkage.",
      edits: [],
      expect: [],
      reach: [],
    },
  ],
});
