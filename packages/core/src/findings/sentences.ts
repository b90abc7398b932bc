import { formatTrimmed } from "../units/format.ts";
import type { Severity } from "./finding.ts";

/** Facts that a sentence is made of: numbers with their unit in the key, and names. */
export type Facts = Readonly<Record<string, number | string>>;

export interface Sentence<F extends Facts> {
  readonly severity: Severity;
  readonly message: (facts: F) => string;
  readonly remedy: (facts: F) => string;
}

const error = make("error");
const warning = make("warning");
const note = make("note");
/** The remedy of a note that asks for nothing. */
const nothing = () => "";

/** Every sentence that a user of the compiler can meet, one entry a code. */
export const sentences = {
  "model-malformed": error(
    (f: { problem: string }) => f.problem,
    (f: { remedy: string }) => f.remedy,
  ),
  "unknown-name": error(
    (f: { name: string; wanted: string; known: string }) =>
      `"${f.name}" is no ${f.wanted} of this model; there is ${f.known}.`,
    (f: { wanted: string; nearest: string }) =>
      f.nearest === ""
        ? `Correct the name, or declare the ${f.wanted}.`
        : `Did you mean "${f.nearest}"? If not, declare the ${f.wanted}.`,
  ),
  "name-twice": error(
    (f: { name: string }) => `"${f.name}" names both a group and a surface.`,
    () => "Give the group another name.",
  ),
  "detent-missing": error(
    (f: { control: string; detent: string }) =>
      `The moves of "${f.control}" do not say what happens at "${f.detent}".`,
    (f: { detent: string }) => `Add "${f.detent}", with {} where nothing moves.`,
  ),
  "moves-mismatch": error(
    (f: { control: string; kind: string }) => `The moves of "${f.control}" are not those of a ${f.kind}.`,
    (f: { kind: string }) =>
      f.kind === "stick"
        ? "Give each surface two places: at -1 and at +1."
        : "Give each detent the surfaces that it moves and where to.",
  ),
  "moved-twice": error(
    (f: { surface: string; first: string; second: string }) =>
      `${f.surface} gets two places here, one by "${f.first}" and one by "${f.second}".`,
    () => "Keep one of the two, or name the surfaces one by one in place of the group.",
  ),
  "per-circle": error(
    (f: { control: string; per: string }) =>
      `The moves of "${f.control}" depend on "${f.per}", whose moves depend on "${f.control}" again.`,
    () => "Let one of the two move on its own.",
  ),
  "channel-twice": error(
    (f: { channel: number; first: string; second: string }) =>
      `Channel ${f.channel} feeds both ${f.first} and ${f.second}.`,
    () => "Give each servo its own channel, or declare yLead: true on both if a Y lead joins them.",
  ),
  "y-lead-moves-differ": error(
    (f: { channel: number; first: string; second: string }) =>
      `${f.first} and ${f.second} share channel ${f.channel} through a Y lead, but their surfaces are not moved alike.`,
    () => "Give both surfaces the same moves (a group does it), or each servo its own channel.",
  ),
  "y-lead-opposed": error(
    (f: { channel: number; first: string; second: string }) =>
      `${f.first} and ${f.second} share channel ${f.channel} through a Y lead, but one goes down with rising and the other with falling pulse.`,
    () => "Turn one of the servos round, use a reversed servo, or give each its own channel.",
  ),
  "y-lead-not-measured": error(
    (f: { channel: number; first: string; second: string }) =>
      `${f.first} and ${f.second} share channel ${f.channel} through a Y lead, but only one of them has readings.`,
    () => "Take readings of both.",
  ),
  "y-lead-apart": error(
    (f: { channel: number; first: string; endsUs: number; second: string; beginsUs: number }) =>
      `No pulse on channel ${f.channel} suits both: what is safe and measured of ${f.first} ends at ${n(f.endsUs)} us, and that of ${f.second} begins at ${n(f.beginsUs)} us.`,
    () => "Move an arm by a tooth so that the travels overlap, or give each servo its own channel.",
  ),
  "servos-not-measured": error(
    (f: { surface: string; measured: string; other: string }) =>
      `${f.measured} and ${f.other} move ${f.surface} together, but only ${f.measured} is known in degrees.`,
    (f: { other: string }) => `Take readings of ${f.other} as well.`,
  ),
  "y-lead-off": warning(
    (f: { channel: number; what: string; apartDeg: number; doubtDeg: number }) =>
      `One pulse on channel ${f.channel} cannot suit both: at ${f.what} the surfaces stand ${n(f.apartDeg)} deg apart, more than the ${n(f.doubtDeg)} deg of doubt.`,
    () => "Adjust one linkage, or give each servo its own channel.",
  ),
  "label-twice": error(
    (f: { label: string; first: string; second: string }) =>
      `The servo label "${f.label}" stands on both ${f.first} and ${f.second}.`,
    () => "A label belongs to one servo: read both again.",
  ),
  "stops-equal": error(
    (f: { levelUs: number }) =>
      `The stop down is the level pulse, ${n(f.levelUs)} us: the surface could not move.`,
    () => "Measure the stop down again; it is the last pulse down at which all was well.",
  ),
  "stops-reversed": error(
    (f: { upUs: number; levelUs: number; downUs: number }) =>
      `Level (${n(f.levelUs)} us) does not lie between the stops (up ${n(f.upUs)} us, down ${n(f.downUs)} us).`,
    () => "Check which of the three pulses was noted wrongly; up and down lie on either side of level.",
  ),
  "nothing-measured-inside": error(
    (f: { servo: string; safeLowUs: number; safeHighUs: number; lowUs: number; highUs: number }) =>
      `The readings of ${f.servo} (${n(f.lowUs)} to ${n(f.highUs)} us) say nothing between its safe pulses (${n(f.safeLowUs)} to ${n(f.safeHighUs)} us).`,
    () => "Take readings between the stops, and check what the surface allows.",
  ),
  "guard-too-wide": error(
    (f: { guardUs: number; lowUs: number; highUs: number }) =>
      `A guard of ${n(f.guardUs)} us inside the stops ${n(f.lowUs)} and ${n(f.highUs)} us leaves nothing between them.`,
    () => "Measure the stops again, or state a smaller guard.",
  ),
  "stop-pushed": warning(
    (f: { stop: string; stopAmps: number; freeAmps: number }) =>
      `The stop ${f.stop} was read past first contact: the servo drew ${n(f.stopAmps)} A there, ${n(f.freeAmps)} A when free.`,
    () => "Approach the stop from inside again and note the pulse at the first touch.",
  ),
  "guard-thin": warning(
    (f: { guardUs: number; neededUs: number }) =>
      `A guard of ${n(f.guardUs)} us is less than the ${n(f.neededUs)} us of doubt that the tester, the step and the servo leave.`,
    (f: { neededUs: number }) => `Leave the guard out, or state at least ${n(f.neededUs)} us.`,
  ),
  "added-past-level": warning(
    (f: { servo: string; addedUs: number; levelUs: number }) =>
      `Up to ${n(f.addedUs)} us may be added behind the receiver, which takes ${f.servo} past level, ${n(f.levelUs)} us, and no stop up was measured there.`,
    () => "Measure the stop up, or let the device add nothing on this channel.",
  ),
  "guard-thick": note(
    (f: { guardUs: number }) => `A guard of ${n(f.guardUs)} us gives away much travel.`,
    () => "Keep it if there is a reason; note the reason at the stop.",
  ),
  "grid-empty": error(
    (f: { lowUs: number; highUs: number; stepUs: number }) =>
      `No percent of this radio lies between the safe pulses ${n(f.lowUs)} and ${n(f.highUs)} us (one step is ${n(f.stepUs)} us).`,
    () => "Use a radio with a finer step, or a linkage that uses more of the servo's travel.",
  ),
  "step-too-coarse": error(
    (f: { what: string; exactUs: number; lowUs: number; highUs: number; stepUs: number }) =>
      `${f.what} needs ${n(f.exactUs)} us, and no step of this radio (${n(f.stepUs)} us) lies between the safe and measured ${n(f.lowUs)} and ${n(f.highUs)} us.`,
    () => "Use a radio with a finer step, or take readings further out.",
  ),
  "signal-range": error(
    (f: { pulseUs: number; reachUs: number; reachPercent: number; what: string }) =>
      `${f.what} needs ${n(f.pulseUs)} us; this radio sends nothing past ${n(f.reachUs)} us (${n(f.reachPercent)} %).`,
    // That radios go to 100 % and beyond: common practice, no source.
    (f: { reachPercent: number }) =>
      `${Math.abs(f.reachPercent) < 95 ? "Look whether reach of the radio is right: radios go to 100 % and beyond. If it is, move" : "Move"} the arm by a tooth so that the travel lies nearer to the centre pulse, or use a radio with more reach.`,
  ),
  "limit-too-tight": error(
    (f: { end: string; percent: number; pulseUs: number; leastPercent: number; leastUs: number }) =>
      `The ${f.end} limit must be ${n(f.percent)} % (${n(f.pulseUs)} us), and this radio takes none within ${n(f.leastPercent)} % of its centre: the nearest, ${n(f.leastUs)} us, is past what is safe.`,
    () =>
      "Move the arm by a tooth so that the stops lie on both sides of the centre pulse, or hold the travel with a device between receiver and servo.",
  ),
  "adds-past-reach": note(
    (f: { what: string; addPercent: number; reachPercent: number }) =>
      `A transmitter that sums would have to add ${n(f.addPercent)} % for ${f.what}, and this radio takes ${n(f.reachPercent)} % at most.`,
    () =>
      "Use one that takes a value for each detent, or let the channel rest nearer to its middle: make another detent the first.",
  ),
  "limit-short": note(
    (f: { end: string; safeUs: number; reachUs: number; reachPercent: number }) =>
      `The ${f.end} limit stands at ${n(f.reachUs)} us: the radio ends at ${n(f.reachPercent)} %, before the safe ${n(f.safeUs)} us.`,
    () => "If the travel is missed, move the arm by a tooth or use a radio with more reach.",
  ),
  "limit-would-pass": note(
    (f: { end: string; percent: number; nearestPercent: number; nearestUs: number; stopUs: number }) =>
      `The ${f.end} limit is ${n(f.percent)} %: the nearest value, ${n(f.nearestPercent)} %, would be ${n(f.nearestUs)} us, past the stop at ${n(f.stopUs)} us.`,
    (f: { percent: number }) => `Enter ${n(f.percent)} %, no step further.`,
  ),
  "no-response": error(
    (f: { servo: string; readings: number; surface: string }) =>
      `${f.surface} is asked for degrees, but ${f.servo} has ${f.readings} reading${f.readings === 1 ? "" : "s"} and no linkage: its pulses say nothing about degrees.`,
    () =>
      "Take at least three readings of pulse and deflection, declare the linkage, or place the detents with atPulse() or atPart().",
  ),
  "linkage-impossible": error(
    (f: { servo: string; problem: string }) =>
      `The linkage of ${f.servo} cannot be as declared: ${f.problem}.`,
    () => "Measure the linkage again.",
  ),
  "linkage-needs-rotation": error(
    (f: { servo: string }) =>
      `The linkage of ${f.servo} says nothing about pulses without the servo's rotation per microsecond and the sense in which it turns.`,
    () => "Give the servo's type its rotation, and the servo turns; or take readings.",
  ),
  "linkage-never-read": note(
    (f: { servo: string; doubtDeg: number }) =>
      `${f.servo} is known by its linkage alone: no reading has tested the dimensions or the servo's stated rotation. At the ends of its travel a position is true to ${n(f.doubtDeg)} deg.`,
    (f: { needed: number }) =>
      `Read at least ${f.needed} positions from end to end before you trust it; the linkage is then fitted to them.`,
  ),
  "linkage-not-fitted": note(
    (f: { servo: string; pulses: number; needed: number }) =>
      `The linkage of ${f.servo} is not used: ${f.pulses === 1 ? "1 reading is" : `${f.pulses} readings are`} too few to fit it to, ${f.needed} are needed.`,
    () => "Take more readings.",
  ),
  "turns-other-way": error(
    (f: { servo: string; turns: string }) =>
      `${f.servo} is declared to turn ${f.turns} as the pulse rises, but through this linkage its surface would then go the other way than the bench says, or could not go at all.`,
    () => "Check turns, and on which side of the shaft the arm stands.",
  ),
  "reading-out-of-reach": warning(
    (f: {
      servo: string;
      pulseUs: number;
      deflectionDeg: number;
      rotationDeg: number;
      endDeg: number;
      end: string;
    }) =>
      `With these dimensions the linkage of ${f.servo} ends at a servo angle of ${n(f.endDeg)} deg (${f.end}), yet there is a reading of ${n(f.deflectionDeg)} deg at ${n(f.pulseUs)} us, ${n(f.rotationDeg)} deg: a dimension is wrong.`,
    () => "Measure the linkage again; until then the readings alone count.",
  ),
  "linkage-misfit": warning(
    (f: { servo: string; largestDeg: number; guesses: string }) =>
      `Geometry and readings of ${f.servo} differ by up to ${n(f.largestDeg)} deg, more than their doubt.${f.guesses === "" ? "" : ` The readings say: ${f.guesses}.`}`,
    (f: { guesses: string }) =>
      `Measure ${f.guesses === "" ? "its dimensions" : "that dimension"} again (which hole is used?); until then the readings alone count.`,
  ),
  "linkage-fits-nothing": warning(
    (f: { servo: string }) => `No dimensions near the declared ones give the readings of ${f.servo}.`,
    () =>
      "Check the kind of linkage, its dimensions, and which side of the shaft the arm stands on; until then the readings alone count.",
  ),
  "linkage-ends": error(
    (f: {
      servo: string;
      pulseUs: number;
      rotationDeg: number;
      deflectionDeg: number;
      end: string;
      lowUs: number;
      highUs: number;
    }) =>
      `Inside the safe pulses of ${f.servo} (${n(f.lowUs)} to ${n(f.highUs)} us) its linkage comes to an end: at ${n(f.pulseUs)} us, a servo angle of ${n(f.rotationDeg)} deg and ${n(f.deflectionDeg)} deg of the surface, ${f.end}.`,
    () => "Set the stop well inside that place, or change the linkage.",
  ),
  "near-dead-centre": warning(
    (f: { servo: string; what: string; angleDeg: number; leastDeg: number; part: string }) =>
      `At ${f.what} rod and ${f.part} of ${f.servo} stand only ${n(f.angleDeg)} deg from a dead centre (${n(f.leastDeg)} deg is the least that is sound).`,
    () => "Use less travel there, or turn arm or horn so that the rod stands more square to it.",
  ),
  "leverage-falls": note(
    (f: {
      servo: string;
      what: string;
      levelDeg: number;
      thereDeg: number;
      levelRatio: number;
      thereRatio: number;
    }) =>
      `The rod of ${f.servo} meets the horn at ${n(f.levelDeg)} deg at rest and only at ${n(f.thereDeg)} deg at ${f.what}: the ratio goes from ${n(f.levelRatio)} to ${n(f.thereRatio)}, the leverage gets worse.`,
    () => "Lean the horn the other way if the load is greatest there.",
  ),
  "rod-buckles": warning(
    (f: { servo: string; bucklesN: number; stallN: number; needsN: number }) =>
      `The rod of ${f.servo} buckles at about ${n(f.bucklesN)} N; in flight it pushes up to ${n(f.needsN)} N, and a stalled servo ${n(f.stallN)} N (estimate).`,
    () => "Use a thicker or shorter rod, and keep the surface from being stopped by anything.",
  ),
  "part-weak": warning(
    (f: { servo: string; part: string; holdsN: number; stallN: number; needsN: number }) =>
      `The weakest part of the linkage of ${f.servo} is its ${f.part}: it holds ${n(f.holdsN)} N; in flight it carries up to ${n(f.needsN)} N, and a stalled servo pulls ${n(f.stallN)} N (estimate).`,
    () => "Use a stronger part.",
  ),
  "no-extension": error(
    (f: { surface: string; servo: string }) =>
      `${f.surface} is asked for an extension, but the linkage of ${f.servo} has no track.`,
    () => "Declare the track, or ask for degrees.",
  ),
  "extension-too-far": error(
    (f: { surface: string; extensionMm: number }) =>
      `The track of ${f.surface} does not reach an extension of ${n(f.extensionMm)} mm.`,
    () => "Ask for less.",
  ),
  "shape-unknown": warning(
    (f: { servo: string; firstUs: number; secondUs: number }) =>
      `${f.servo} has two readings (${n(f.firstUs)} and ${n(f.secondUs)} us): a straight line is assumed between them, its real shape is not known.`,
    (f: { middleUs: number }) => `Take a third reading near ${n(f.middleUs)} us.`,
  ),
  "reading-twice": error(
    (f: { pulseUs: number; firstDeg: number; secondDeg: number }) =>
      `Two readings at ${n(f.pulseUs)} us: ${n(f.firstDeg)} and ${n(f.secondDeg)} deg.`,
    () => 'Keep one, or mark them "out" and "back" if the servo came from either side.',
  ),
  "not-monotone": error(
    (f: { lowUs: number; highUs: number; lowDeg: number; highDeg: number }) =>
      `Deflection turns back between ${n(f.lowUs)} us (${n(f.lowDeg)} deg) and ${n(f.highUs)} us (${n(f.highDeg)} deg): a slipped arm, a loose clevis or a misread value.`,
    () => "Look at the linkage there and take both readings again.",
  ),
  "reading-pulse": error(
    (f: { pulseUs: number; lowUs: number; highUs: number; lowDeg: number; highDeg: number }) =>
      `No servo takes ${n(f.pulseUs)} us, and with it deflection turns back between ${n(f.lowUs)} us (${n(f.lowDeg)} deg) and ${n(f.highUs)} us (${n(f.highDeg)} deg).`,
    () => "Look whether a digit of this pulse is missing, or one too many.",
  ),
  "suspicious-reading": warning(
    (f: { pulseUs: number; readDeg: number; expectedDeg: number; missDeg: number }) =>
      `The reading ${n(f.readDeg)} deg at ${n(f.pulseUs)} us disagrees with its neighbours, which expect ${n(f.expectedDeg)} deg: ${n(f.missDeg)} deg off.`,
    (f: { pulseUs: number }) => `Measure ${n(f.pulseUs)} us again.`,
  ),
  hysteresis: warning(
    (f: { pulseUs: number; differenceDeg: number }) =>
      `Out and back differ by ${n(f.differenceDeg)} deg at ${n(f.pulseUs)} us: free play or the servo's dead band; no position can be better than that.`,
    () => "Take up the play, then measure again.",
  ),
  "read-more": note(
    (f: {
      servo: string;
      wantedDeg: number;
      gapDeg: number;
      readingDeg: number;
      lowUs: number;
      highUs: number;
      pulseUs: number;
    }) =>
      `Near ${n(f.wantedDeg)} deg the gap between the readings of ${f.servo} at ${n(f.lowUs)} and ${n(f.highUs)} us costs up to ${n(f.gapDeg)} deg, more than a reading's own doubt of ${n(f.readingDeg)} deg.`,
    (f: { pulseUs: number }) => `Take the next reading at ${n(f.pulseUs)} us.`,
  ),
  "reading-past-stop": warning(
    (f: { pulseUs: number; stopUs: number; stop: string }) =>
      `A reading was taken at ${n(f.pulseUs)} us, past the stop ${f.stop} at ${n(f.stopUs)} us.`,
    () => "Check the stop: it is the last pulse at which all was well.",
  ),
  "direction-disagrees": error(
    (f: { servo: string; levelUs: number; downUs: number; readings: string; stops: string }) =>
      `The readings of ${f.servo} go down with ${f.readings} pulse, its stops with ${f.stops} pulse (level ${n(f.levelUs)} us, down ${n(f.downUs)} us).`,
    () => "Check the signs of the readings (trailing edge down is positive) and which stop is which.",
  ),
  "level-disagrees": warning(
    (f: { servo: string; levelUs: number; deflectionDeg: number; doubtDeg: number }) =>
      `At the level pulse ${n(f.levelUs)} us the readings of ${f.servo} say ${n(f.deflectionDeg)} deg, more than their doubt of ${n(f.doubtDeg)} deg.`,
    () => "Set the meter's zero on the fixed surface again and repeat the reading at level.",
  ),
  "level-not-measured": warning(
    (f: { servo: string; levelUs: number }) =>
      `The readings of ${f.servo} do not reach its level pulse, ${n(f.levelUs)} us.`,
    () => "Take a reading at level.",
  ),
  "throw-without-chord": error(
    (f: { surface: string }) =>
      `A throw in millimetres says nothing about degrees without the chord of ${f.surface}.`,
    () => "Give the surface its chord, hinge to trailing edge.",
  ),
  "throw-too-long": error(
    (f: { surface: string; throwMm: number; chordMm: number }) =>
      `No deflection of ${f.surface} gives a throw of ${n(f.throwMm)} mm at a chord of ${n(f.chordMm)} mm.`,
    () => "Check the throw and the chord.",
  ),
  "meter-unfit": error(
    (f: { surface: string; meter: string; hingeDeg: number; largestDeg: number }) =>
      `An angle meter used as "${f.meter}" cannot read ${f.surface}: its hinge stands ${n(f.hingeDeg)} deg off, more than ${n(f.largestDeg)} deg.`,
    () => "Read the throw at the trailing edge with a rule instead.",
  ),
  "angle-impossible": error(
    (f: { surface: string; meter: string; shownDeg: number; largestDeg: number }) =>
      `An angle meter used as "${f.meter}" on ${f.surface} cannot have shown ${n(f.shownDeg)} deg; ${n(f.largestDeg)} deg is the most.`,
    () => "Check the reading, the hinge's sweep and tilt, and the kind of meter.",
  ),
  "part-without-up": error(
    (f: { servo: string; part: number }) =>
      `Part ${n(f.part)} lies above level, but the bench of ${f.servo} has no stop up.`,
    () => "Measure the stop up, or use a part of 0 or more.",
  ),
  "adds-in-pulse": warning(
    (f: { surface: string; controls: string }) =>
      `${f.surface} is moved by ${f.controls}; without readings their moves can only be added in pulse, which is not the same in degrees.`,
    () => "Take readings, so that moves add in degrees.",
  ),
  "not-measured": error(
    (f: {
      what: string;
      wantedDeg: number;
      measuredDeg: number;
      measuredUs: number;
      servo: string;
      reachDeg: number;
      bound: "at most" | "at least";
      end: "stop" | "reading";
    }) =>
      `${f.what} wants ${n(f.wantedDeg)} deg; what is known of ${f.servo} ends at ${n(f.measuredDeg)} deg (${n(f.measuredUs)} us), and nothing is guessed past them.`,
    (f: { reachDeg: number; bound: string; end: string }) =>
      `Ask for ${n(f.reachDeg)} deg ${f.bound}, ${f.end === "stop" ? "which is where the stop and its guard stand; more needs another hole in the arm or horn" : "or take a reading beyond it"}.`,
  ),
  "pulse-not-measured": error(
    (f: { pulseUs: number; servo: string; lowUs: number; highUs: number }) =>
      `${n(f.pulseUs)} us lies outside the readings of ${f.servo}, ${n(f.lowUs)} to ${n(f.highUs)} us, and nothing is guessed past them.`,
    () => "Ask for a pulse between the readings, or take a reading beyond it.",
  ),
  "limit-passed": error(
    (f: { what: string; pulseUs: number; limitUs: number; stopUs: number; guardUs: number; stop: string }) =>
      `${f.what} needs ${n(f.pulseUs)} us, ${n(Math.abs(f.pulseUs - f.limitUs))} us past the safe ${n(f.limitUs)} us (stop ${f.stop} ${n(f.stopUs)} us, guard ${n(f.guardUs)} us).`,
    (f: { reach: string }) => `Do not connect the linkage with this. ${f.reach}`,
  ),
  "combination-cut": warning(
    (f: {
      surface: string;
      combination: string;
      asked: number;
      end: number;
      lost: number;
      unit: string;
      losers: string;
    }) =>
      `${f.surface}: ${f.combination} together ask ${n(f.asked)} ${f.unit}; ${n(f.end)} ${f.unit} is there. ${n(f.lost)} ${f.unit} are cut by the limit (${f.losers} of its share).`,
    (f: { surface: string }) => `Say in yields which control gives way on ${f.surface}, or ask for less.`,
  ),
  "combination-passes": error(
    (f: {
      surface: string;
      combination: string;
      asked: number;
      end: number;
      lost: number;
      unit: string;
      losers: string;
    }) =>
      `${f.surface}: ${f.combination} together ask ${n(f.asked)} ${f.unit}; ${n(f.end)} ${f.unit} is there, and the limits of this radio do not cut sums: ${n(f.lost)} ${f.unit} too far (${f.losers} of its share).`,
    (f: { surface: string }) => `Say in yields which control gives way on ${f.surface}, or ask for less.`,
  ),
  "match-unproven": note(
    (f: { first: string; second: string; withinDeg: number; uncertaintyDeg: number }) =>
      `${n(f.withinDeg)} deg is allowed between ${f.first} and ${f.second}, and the readings tell their difference to ${n(f.uncertaintyDeg)} deg only: no reading can show that they agree.`,
    () =>
      "Read with a finer meter and measure the free play, or allow more; the largest causes of the doubt tell which.",
  ),
  "sides-differ": warning(
    (f: {
      first: string;
      second: string;
      worstDeg: number;
      withinDeg: number;
      from: string;
      to: string;
      at: number;
      placeDeg: number;
    }) =>
      f.at > 0 && f.at < 1
        ? `${f.first} and ${f.second} come ${n(f.worstDeg)} deg apart on the way from ${f.from} to ${f.to}, near ${n(f.placeDeg)} deg; ${n(f.withinDeg)} deg is allowed.`
        : `${f.first} and ${f.second} stand ${n(f.worstDeg)} deg apart at ${f.at === 0 ? f.from : f.to}; ${n(f.withinDeg)} deg is allowed.`,
    (f: { at: number; placeDeg: number }) =>
      f.at > 0 && f.at < 1
        ? `Put a detent or a point of the curve near ${n(f.placeDeg)} deg, or make the two linkages alike.`
        : "Use a radio with a finer step, or allow the difference.",
  ),
  "servos-fight": warning(
    (f: { surface: string; worstDeg: number; from: string; to: string; placeDeg: number }) =>
      `The servos of ${f.surface} pull it ${n(f.worstDeg)} deg apart on the way from ${f.from} to ${f.to}, near ${n(f.placeDeg)} deg.`,
    () =>
      "Match them at more points (the plan states the pulses that belong together), and confirm by the holding current.",
  ),
  "transit-too-fast": warning(
    (f: { control: string; askedSeconds: number; fastestSeconds: number; servo: string }) =>
      `${f.control} is to take ${n(f.askedSeconds)} s; ${f.servo} needs ${n(f.fastestSeconds)} s even without load, which is used.`,
    () => "Allow more time.",
  ),
  "transit-depends": warning(
    (f: { control: string; per: string }) =>
      `${f.control} is to move slowly, but how far it moves depends on ${f.per}: no one time is right, and it moves at once.`,
    (f: { control: string; per: string }) =>
      `Give ${f.control} moves that do not depend on ${f.per}, or leave its transit out.`,
  ),
  "curve-coarse": note(
    (f: { surface: string; points: number; worstDeg: number; wantedDeg: number; needed: number }) =>
      `The curve of ${f.surface} with ${f.points} points is up to ${n(f.worstDeg)} deg off between them; ${f.needed} points would keep it within ${n(f.wantedDeg)} deg.`,
    () => "Enter the detents as values of their own where the curve is too far off.",
  ),
  "curve-never-fine": note(
    (f: { surface: string; points: number; worstDeg: number; wantedDeg: number; needed: number }) =>
      `The curve of ${f.surface} with ${f.points} points is up to ${n(f.worstDeg)} deg off between them; even ${f.needed} points do not keep it within ${n(f.wantedDeg)} deg.`,
    () => "Enter the detents as values of their own, or use a radio with a finer step.",
  ),
  "percents-summed": note(
    (f: { surface: string; combination: string; wantedDeg: number; givesDeg: number; errorDeg: number }) =>
      `A transmitter that adds percents gives ${n(f.givesDeg)} deg on ${f.surface} at ${f.combination}, where ${n(f.wantedDeg)} deg is wanted: ${n(f.errorDeg)} deg off.`,
    () => "Use a correction curve where the radio has one, or a separate value for this combination.",
  ),
  "one-side-short": warning(
    (f: { group: string; what: string; short: string; lowestDeg: number; highestDeg: number }) =>
      `${f.what} is out of reach of ${f.short}; all of ${f.group} reach ${n(f.lowestDeg)} to ${n(f.highestDeg)} deg.`,
    () => "Ask for what both sides reach: one side alone would turn the model.",
  ),
  "mirror-differs": note(
    (f: {
      first: string;
      second: string;
      what: string;
      mirroredUs: number;
      givesDeg: number;
      wantedDeg: number;
    }) =>
      `${f.second} copied from ${f.first} by mirroring would stand at ${n(f.givesDeg)} deg at ${f.what} (${n(f.mirroredUs)} us), not at ${n(f.wantedDeg)} deg; the plan computes each side from its own readings.`,
    nothing,
  ),
  "failsafe-missing": note(
    () => "The model says nothing of failsafe; the plan takes every control at rest.",
    () => "Declare failsafe, and see on the model that the receiver really goes there.",
  ),
  "power-up-unsafe": error(
    (f: { servo: string; powerUpUs: number; lowUs: number; highUs: number }) =>
      `At power-up the receiver sends ${n(f.powerUpUs)} us to ${f.servo}, outside its safe ${n(f.lowUs)} to ${n(f.highUs)} us.`,
    () =>
      "Do not connect this surface to this output, unless the receiver can be set to send a safe pulse or none.",
  ),
  "power-up-moves": warning(
    (f: { surface: string; powerUpUs: number; givesDeg: number }) =>
      `At power-up, before the transmitter is heard, the receiver sends ${n(f.powerUpUs)} us: ${f.surface} goes to ${n(f.givesDeg)} deg.`,
    () => "Switch the transmitter on first, always.",
  ),
  "reserve-short": warning(
    (f: { surface: string; detent: string; way: string; leftDeg: number; wantedDeg: number }) =>
      `${f.surface} reaches only ${n(f.leftDeg)} deg ${f.way} with full stick${f.detent === "" ? "" : ` at ${f.detent}`}; ${n(f.wantedDeg)} deg is wanted.`,
    (f: { detent: string }) =>
      f.detent === ""
        ? "Give the stick more travel."
        : "Use less compensation at that detent, or more stick travel.",
  ),
  // That the linear law overstates beyond about 20 deg: textbook order, from memory.
  "not-held": error(
    (f: {
      servo: string;
      what: string;
      sharePercent: number;
      airspeedMps: number;
      limitMps: number;
      momentNm: number;
    }) =>
      `${f.servo} would need about ${whole(f.sharePercent)} % of its stall torque to hold ${f.what} at ${n(f.airspeedMps)} m/s (estimate; beyond about 20 deg the linear law overstates): it will be blown back.`,
    (f: { limitMps: number }) =>
      `Use this detent up to ${n(f.limitMps)} m/s (half of the torque) and say so in airspeed, or use a stronger servo or a linkage with more grip.`,
  ),
  "load-high": warning(
    (f: {
      servo: string;
      what: string;
      sharePercent: number;
      airspeedMps: number;
      limitMps: number;
      momentNm: number;
    }) =>
      `${f.servo} would need about ${whole(f.sharePercent)} % of its stall torque to hold ${f.what} at ${n(f.airspeedMps)} m/s (estimate; beyond about 20 deg the linear law overstates).`,
    (f: { limitMps: number }) => `Half of the torque is reached at ${n(f.limitMps)} m/s.`,
  ),
  "supply-short": warning(
    (f: { neededAmps: number; supplyAmps: number; servos: number }) =>
      `All ${f.servos} servos holding and one stalled draw about ${n(f.neededAmps)} A; the supply gives ${n(f.supplyAmps)} A.`,
    () => "Use a stronger supply, and watch the voltage when a servo is stopped by hand.",
  ),
  "frame-short": warning(
    (f: { servo: string; frameMs: number; leastMs: number }) =>
      `${f.servo} is an analogue servo on a frame of ${n(f.frameMs)} ms, under ${n(f.leastMs)} ms: it may overheat.`,
    () => "Set the receiver to the long frame, or use a digital servo.",
  ),
  "thermal-shift": warning(
    (f: { servo: string; kelvin: number; shiftUs: number; shiftDeg?: number; guardUs: number }) =>
      `Between the bench and the flight ${n(f.kelvin)} K may move ${f.servo} by ${n(f.shiftUs)} us${f.shiftDeg === undefined ? "" : `, ${n(f.shiftDeg)} deg of the surface at rest`}; its guard is ${n(f.guardUs)} us.`,
    (f: { shiftUs: number }) =>
      `State a guard of at least ${n(f.shiftUs)} us more, or measure at the temperature of flight.`,
  ),
  "rod-grows": note(
    (f: { servo: string; kelvin: number; growthMm: number; rodDeg: number; shiftDeg: number }) =>
      `Over ${n(f.kelvin)} K the rod of ${f.servo} and what it lies along grow apart by ${n(f.growthMm)} mm, which moves the surface at rest by ${n(f.rodDeg)} deg; with the servo's drift it may be ${n(f.shiftDeg)} deg.`,
    () => "Take a rod that grows as what it lies along does, or set level at the temperature of flight.",
  ),
  "servo-pulse": error(
    (f: { servo: string; lowUs: number; highUs: number; shortestUs: number; longestUs: number }) =>
      `The stops of ${f.servo} (${n(f.lowUs)} and ${n(f.highUs)} us) lie outside what the bare servo takes, ${n(f.shortestUs)} to ${n(f.longestUs)} us.`,
    () => "Check the servo's card, and measure the stops again.",
  ),
  "play-large": warning(
    (f: { surface: string; playDeg: number; mostDeg: number }) =>
      `${f.surface} has ${n(f.playDeg)} deg of free play from side to side; more than ${n(f.mostDeg)} deg should be looked at before any flight.`,
    () => "Find the play (servo gear, clevis, horn, hinge) and take it out. Nothing here clears flutter.",
  ),
  "sum-unsafe": error(
    (f: { surface: string; channel: number; reachUs: number; safeUs: number }) =>
      `The values of channel ${f.channel} (${f.surface}) add up to as far as ${n(f.reachUs)} us on a transmitter that sums percents, past the safe ${n(f.safeUs)} us, and the limits of this radio do not cut sums.`,
    (f: { surface: string }) =>
      `Ask for less on ${f.surface}, say in yields what gives way by more, or use a radio whose limits cut.`,
  ),
  "gave-way": note(
    (f: { control: string; position: string; surface: string; from: number; to: number; unit: string }) =>
      `${f.control} at ${f.position} gives way on ${f.surface}: ${n(f.to)} ${f.unit} in place of ${n(f.from)} ${f.unit}.`,
    () => "To keep the full value, take it out of yields.",
  ),
  "not-allowed": error(
    (f: { what: string; wantedDeg: number; allowedDeg: number }) =>
      `${f.what} wants ${n(f.wantedDeg)} deg; the model allows ${n(f.allowedDeg)} deg.`,
    () => "Ask for less, or change what is allowed.",
  ),
  "allowed-not-held": error(
    (f: { surface: string; servo: string; lowestDeg: number; highestDeg: number }) =>
      `The model allows ${f.surface} only ${n(f.lowestDeg)} to ${n(f.highestDeg)} deg, but ${f.servo} has no readings: nobody knows at which pulses that is, and nothing holds it there.`,
    () => "Take readings, or leave allowed out and let the stops hold the surface.",
  ),
  "range-reversed": error(
    (f: { what: string; first: number; second: number; unit: string }) =>
      `${f.what} is ${n(f.first)} to ${n(f.second)} ${f.unit}: the first must be the lower.`,
    () => "Swap the two, or correct them.",
  ),
  "half-the-pulses": note(
    (f: { surface: string; from: string; to: string; halfUs: number; halfDeg: number; wantedDeg: number }) =>
      `Half the pulses between ${f.from} and ${f.to} (${n(f.halfUs)} us) would put ${f.surface} at ${n(f.halfDeg)} deg, not at the half, ${n(f.wantedDeg)} deg; the plan computes from the readings.`,
    nothing,
  ),
  "not-mirrored": warning(
    (f: { first: string; second: string; pulse: string }) =>
      `${f.first} and ${f.second} are declared to turn opposite ways, yet both go down with ${f.pulse} pulse.`,
    () => "Check the direction of both servos and the signs of their readings.",
  ),
  "section-short": error(
    (f: { surface: string; sectionMm: number; chordMm: number }) =>
      `The section of ${f.surface}, ${n(f.sectionMm)} mm, is shorter than its chord, ${n(f.chordMm)} mm, which is the rear of it.`,
    () => "State the whole chord of the section, from its leading edge to the trailing edge of the surface.",
  ),
  "bore-wide": error(
    (f: { servo: string; boreMm: number; diameterMm: number }) =>
      `The bore of the rod of ${f.servo}, ${n(f.boreMm)} mm, is no less than its diameter, ${n(f.diameterMm)} mm.`,
    () => "Measure both again; the bore is the inner diameter of a tube. A solid rod has none.",
  ),
  implausible: warning(
    (f: { what: string; value: number; unit: string; low: number; high: number }) =>
      `${f.what} is ${n(f.value)} ${f.unit}; ${n(f.low)} to ${n(f.high)} ${f.unit} is usual.`,
    () => "Check the unit and the decimal point.",
  ),
};

/** A number for a sentence: at most one decimal from 100 on, two below, without trailing zeros. */
function n(value: number): string {
  return formatTrimmed(value, Math.abs(value) >= 100 ? 1 : 2);
}

function whole(value: number): string {
  return formatTrimmed(value, 0);
}

type Both<M extends Facts, R> = R extends Facts ? M & R : M;

function make(severity: Severity) {
  return <M extends Facts, R extends Facts | unknown>(
    message: (facts: M) => string,
    remedy: (facts: R) => string,
  ) => ({ severity, message, remedy }) as unknown as Sentence<Both<M, R>>;
}
