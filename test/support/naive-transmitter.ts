import type { Edit, PlanControl, PlanRadio, ProcedureStep } from "../../packages/core/src/plan/setup-plan.ts";

/** What can be typed, with two settings that no procedure touches and the usual habit does. */
export type NaiveEdit =
  | Edit
  | { readonly channel: number; readonly set: "shift"; readonly percent: number }
  | { readonly channel: number; readonly set: "reverse" };

export interface NaiveStep extends Pick<ProcedureStep, "supply" | "linkage"> {
  readonly edits: readonly NaiveEdit[];
}

type Where = Readonly<Record<string, string | number>>;
interface Box {
  low: number;
  high: number;
  rest: number;
  shift: number;
  reversed: boolean;
  failsafeUs: number;
  adds: { control: string; at: string | number; when: Readonly<Record<string, string>>; add: number }[];
}

/**
 * The output rule once more, on purpose as plainly as can be and sharing no code with the library: a box of numbers for each
 * channel, and every place of every control tried one by one. `limits` says how far a new memory goes, percent to either side.
 */
export function naiveTransmitter(
  radio: Pick<PlanRadio, "centreUs" | "per100Us"> & {
    readonly endPoints: PlanRadio["endPoints"] | "about shift";
  },
  channels: readonly number[],
  limits: number,
  sticks: readonly Extract<PlanControl, { kind: "stick" }>[] = [],
) {
  const stickOf = (name: string) =>
    sticks.find(({ control }) => control === name) ?? { rests: 0, trimPercent: 0 };
  const us = (percent: number): number => {
    const { per100Us } = radio;
    const span = typeof per100Us === "number" ? per100Us : percent < 0 ? per100Us.below : per100Us.above;
    return radio.centreUs + (percent / 100) * span;
  };
  const full = radio.endPoints === "scale" ? 100 : limits;
  const boxes = new Map<number, Box>();
  for (const channel of channels)
    boxes.set(channel, {
      low: -limits,
      high: limits,
      rest: 0,
      shift: 0,
      reversed: false,
      failsafeUs: radio.centreUs,
      adds: [
        { control: "any stick", at: -1, when: {}, add: -full },
        { control: "any stick", at: 1, when: {}, add: full },
      ],
    });
  const box = (channel: number): Box => {
    const found = boxes.get(channel);
    if (found === undefined) throw new Error(`no channel ${channel}`);
    return found;
  };

  function pulse(channel: number, where: Where): number {
    const { low, high, rest, shift, reversed, adds } = box(channel);
    let sum = rest;
    for (const control of new Set(adds.map((one) => one.control))) {
      const mine = adds.filter((one) => one.control === control && holds(one.when, where));
      const special = mine.filter((one) => Object.keys(one.when).length > 0);
      const { rests } = stickOf(control);
      const now = where[control] ?? rests;
      for (const { at, add } of special.length > 0 ? special : mine) {
        if (typeof now === "string" && at === now) sum += add;
        if (typeof now !== "number" || typeof at !== "number") continue;
        // A lever is half at either end in its middle; a stick is at neither in its centre.
        if (rests !== 0) sum += add * (0.5 + (at * now) / 2);
        else if (at * now > 0) sum += add * Math.abs(now);
      }
    }
    const cut = (value: number) => Math.min(Math.max(value, low), high);
    let out: number;
    if (radio.endPoints === "scale")
      out = us(low + shift) + ((sum + 100) / 200) * (us(high + shift) - us(low + shift));
    else if (radio.endPoints === "clamp") out = us(cut(sum + shift));
    else out = us(cut(sum) + shift);
    return reversed ? 2 * radio.centreUs - out : out;
  }

  /** Everything the channel can send: every place of every control, and the failsafe. */
  function allPulses(channel: number): number[] {
    const { adds, failsafeUs } = box(channel);
    const places = new Map<string, Set<string | number>>();
    const place = (control: string, at: string | number) => {
      const known = places.get(control) ?? new Set<string | number>();
      places.set(control, known);
      if (typeof at === "string") known.add("anywhere else").add(at);
      else for (const end of [-1, 0, 1]) known.add(end * (1 + stickOf(control).trimPercent / 100));
    };
    for (const { control, at, when } of adds) {
      place(control, at);
      for (const [selector, detent] of Object.entries(when)) place(selector, detent);
    }
    let all: Where[] = [{}];
    for (const [control, ats] of places)
      all = all.flatMap((where) => [...ats].map((at) => ({ ...where, [control]: at })));
    return [failsafeUs, ...all.map((where) => pulse(channel, where))];
  }

  function edit(change: NaiveEdit, typed: number): void {
    const it = box(change.channel);
    switch (change.set) {
      case "clear":
        Object.assign(it, { rest: 0, adds: [] });
        return;
      case "limitLow":
        it.low = typed;
        return;
      case "limitHigh":
        it.high = typed;
        return;
      case "neutral":
        it.rest = typed;
        return;
      case "shift":
        it.shift = typed;
        return;
      case "reverse":
        it.reversed = !it.reversed;
        return;
      case "failsafe":
        it.failsafeUs =
          radio.endPoints === "scale"
            ? us(it.low) + ((typed + 100) / 200) * (us(it.high) - us(it.low))
            : us(typed);
        return;
      case "detent":
      case "stick": {
        const { control = "", when = {} } = change;
        const at = change.detent ?? change.stick ?? 0;
        const others = it.adds.filter(
          (one) => one.control !== control || one.at !== at || !sameWords(one.when, when),
        );
        it.adds = [...others, { control, at, when, add: typed }];
      }
    }
  }

  /** The number that an edit types, and what stands there before. */
  function numbersOf(change: NaiveEdit): { from: number; to: number } {
    const it = box(change.channel);
    if (change.set === "detent" || change.set === "stick") {
      const at = change.detent ?? change.stick;
      const old = it.adds.find(
        (one) => one.control === change.control && one.at === at && sameWords(one.when, change.when ?? {}),
      );
      return { from: old?.add ?? 0, to: change.addPercent ?? 0 };
    }
    const to = "percent" in change ? (change.percent ?? 0) : 0;
    const from =
      { limitLow: it.low, limitHigh: it.high, neutral: it.rest, shift: it.shift }[change.set as string] ?? to;
    return { from, to };
  }

  return { pulse, allPulses, edit, numbersOf, channels };
}

export type NaiveTransmitter = ReturnType<typeof naiveTransmitter>;

/**
 * The first pulse that a powered channel could send past its bounds while the steps are done, every value half typed on its way, its
 * failsafe among them: a receiver that is off does not hear a new one, and starts with the old. Undefined where there is none. The
 * transmitter is left as the steps leave it.
 */
export function findUnsafe(
  transmitter: NaiveTransmitter,
  steps: readonly NaiveStep[],
  safeUs: ReadonlyMap<number, readonly [number, number]>,
): string | undefined {
  const check = (step: NaiveStep, what: string, channels: readonly number[]): string | undefined => {
    if (step.supply === "off") return undefined;
    for (const channel of channels) {
      const safe = safeUs.get(channel);
      if (safe === undefined) continue;
      const low = step.linkage === "on" ? safe[0] : Math.min(900, safe[0]);
      const high = step.linkage === "on" ? safe[1] : Math.max(2100, safe[1]);
      for (const pulse of transmitter.allPulses(channel))
        if (!(pulse >= low - 1e-9 && pulse <= high + 1e-9))
          return `${what}: channel ${channel} sends ${pulse}, not ${low} to ${high}`;
    }
    return undefined;
  };
  let notYetHeard: NaiveEdit[] = [];
  for (const [index, step] of steps.entries()) {
    const name = `step ${index + 1}`;
    const before = check(step, `${name}, before`, transmitter.channels);
    if (before !== undefined) return before;
    const typed = [...notYetHeard, ...step.edits];
    notYetHeard = step.supply === "off" ? typed.filter(({ set }) => set === "failsafe") : [];
    for (const change of typed) {
      if (notYetHeard.includes(change)) continue;
      const { from, to } = transmitter.numbersOf(change);
      for (const part of [0, 0.3, 0.7, 1]) {
        transmitter.edit(change, part === 1 ? to : from + part * (to - from));
        const during = check(step, `${name}, ${change.set} ${part}`, [change.channel]);
        if (during !== undefined) return during;
      }
    }
  }
  return undefined;
}

function holds(when: Readonly<Record<string, string>>, where: Where): boolean {
  return Object.keys(when).every((selector) => where[selector] === when[selector]);
}

function sameWords(a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean {
  return Object.keys({ ...a, ...b }).every((key) => a[key] === b[key]);
}
