import { decimalsOf } from "../../units/decimals.ts";
import { formatNumber } from "../../units/format.ts";
import { nameChannel } from "../name-channel.ts";
import type { Enter, Position } from "../setup-plan.ts";
import { restKey, valueAt } from "./entered.ts";
import { type Hypothesis, type Suspect, stateLines, typed, withValue } from "./hypothesis.ts";
import { namePlace } from "./place-words.ts";
import type { CauseKind } from "./verification.ts";

interface Slip {
  readonly kind: CauseKind;
  readonly value: number;
  readonly otherPlace?: string;
  readonly other?: string;
}

/** What may have been typed in place of one single value of a channel: a setting, a limit or the failsafe. */
export function valueSlips(suspect: Suspect, others: readonly Suspect[]): readonly Hypothesis[] {
  return [...settingSlips(suspect, others), ...failsafeSlips(suspect), ...limitSlips(suspect)];
}

/** Names of the states of a channel, by their key. */
export function stateNames({ plan, observed }: Suspect): ReadonlyMap<string, string> {
  const names = new Map([[restKey, namePlace({ kind: "neutral" })]]);
  for (const setting of plan.settings) {
    const key = observed.keyOf(setting);
    if (key !== restKey || names.get(key) === namePlace({ kind: "neutral" }))
      names.set(key, namePlace({ kind: "setting", ...setting }));
  }
  return names;
}

function settingSlips(suspect: Suspect, others: readonly Suspect[]): readonly Hypothesis[] {
  const { plan, entered, observed } = suspect;
  const names = stateNames(suspect);
  const differing = differingKeys(suspect);
  const [key] = differing;
  if (key === undefined || differing.size !== 1) return [];
  const value = entered.values.get(key);
  const rest = entered.values.get(restKey);
  if (value === undefined || rest === undefined) return [];
  const place = names.get(key) ?? "";
  const setting = plan.settings.find((one) => observed.keyOf(one) === key);
  const step = entered.scale.step;
  const seen = stateLines(observed).find((one) => one.key === key)?.line.readUs;
  const slips: Slip[] = [
    ...(seen === undefined ? [] : [{ kind: "otherValue", value: valueAt(entered, seen) } as const]),
    ...typingSlips(value, step),
    ...typingSlips(value - rest, step).map((slip) => ({ ...slip, value: rest + slip.value })),
    { kind: "notEntered", value: 0 },
    ...(key === restKey ? [] : [{ kind: "notEntered", value: rest } as const]),
    ...(setting === undefined ? [] : columnsOf(setting.enter, entered.scaling)).flatMap((value, column) =>
      value === undefined
        ? []
        : [{ kind: "wrongColumn", value, other: columnNames(entered.scaling)[column] ?? "" } as const],
    ),
    ...[...entered.values].flatMap(([otherKey, otherValue]) =>
      otherKey === key
        ? []
        : [{ kind: "otherDetent", value: otherValue, otherPlace: names.get(otherKey) ?? "" } as const],
    ),
    ...others.flatMap(({ plan: twin, entered: { values } }) => {
      const theirs = twin === plan ? undefined : values.get(key);
      return theirs === undefined
        ? []
        : [{ kind: "wrongChannel", value: theirs, other: nameChannel(twin) } as const];
    }),
  ];
  const reach = entered.scaling ? 100 : entered.scale.reach;
  return slips.flatMap(({ kind, value: slipped, ...words }): Hypothesis[] => {
    // A transmitter that is given ten times too much stops at its reach; other numbers past it would be noticed.
    const held = Math.min(Math.max(slipped, -reach), reach);
    if (held !== slipped && kind !== "decimalPoint") return [];
    return [
      {
        kind,
        channels: [plan.channel],
        prediction: typed(withValue(entered, key, held)),
        where: nameChannel(plan),
        place,
        ...words,
        numbers: { percent: value, typedPercent: held },
        byShare: entered.scaling,
      },
    ];
  });
}

function failsafeSlips(suspect: Suspect): readonly Hypothesis[] {
  const { plan, entered, observed } = suspect;
  const wrong = observed.pulses.some(
    ({ place, outcome }) => place.kind === "failsafe" && outcome === "differs",
  );
  if (!wrong || differingKeys(suspect).size > 0) return [];
  const names = stateNames(suspect);
  const slips: Slip[] = [
    { kind: "failsafeNotSet", value: 0 },
    ...[...entered.values].map(
      ([key, value]): Slip =>
        key === restKey
          ? { kind: "failsafeNotSet", value }
          : { kind: "otherDetent", value, otherPlace: names.get(key) ?? "" },
    ),
    ...typingSlips(entered.failsafe, entered.scale.step),
  ];
  return slips.map(({ kind, value, ...words }) => ({
    kind,
    channels: [plan.channel],
    prediction: typed({ ...entered, failsafe: value }),
    where: nameChannel(plan),
    place: "failsafe",
    ...words,
    numbers: { percent: entered.failsafe, typedPercent: value },
    byShare: entered.scaling,
  }));
}

function limitSlips({ plan, entered }: Suspect): readonly Hypothesis[] {
  const ends = [
    ["lowPercent", "the low limit"],
    ["highPercent", "the high limit"],
  ] as const;
  return ends.flatMap(([end, place]) =>
    typingSlips(entered[end], entered.scale.step).map(({ kind, value }) => ({
      kind,
      channels: [plan.channel],
      prediction: typed({ ...entered, [end]: value }),
      where: nameChannel(plan),
      place,
      numbers: { percent: entered[end], typedPercent: value },
    })),
  );
}

/** The control states whose pulse, or where that was not read whose deflection, is wrong. */
export function differingKeys({ observed }: Pick<Suspect, "observed">): ReadonlySet<string> {
  const { pulses, deflections, keyOf } = observed;
  const keys = new Set<string>();
  for (const { place, outcome } of [...pulses, ...deflections]) {
    if (outcome !== "differs") continue;
    if (place.kind === "setting") keys.add(keyOf(place));
    if (place.kind === "neutral") keys.add(restKey);
  }
  return keys;
}

/** The other numbers that stand beside a value in the plan, one a column; undefined where a column has none for it. */
export function columnsOf(
  { addPercent, percent, sharePercent, commandPercent }: Position & Partial<Enter>,
  scaling: boolean,
): readonly (number | undefined)[] {
  return [addPercent, scaling ? percent : sharePercent, commandPercent];
}

/** What `columnsOf` gives, each in words. */
export function columnNames(scaling: boolean): readonly string[] {
  return ["the number to add", scaling ? "the percent" : "the share", "the input of the curve"];
}

/** A value with its sign lost, two digits changed over, or its point in the wrong place. */
function typingSlips(value: number, step: number): readonly Slip[] {
  const text = formatNumber(Math.abs(value), decimalsOf(step));
  const places = [...text].flatMap((character, index) => (character === "." ? [] : [index]));
  const swapped = places.slice(1).flatMap((second, index): Slip[] => {
    const first = places[index] ?? 0;
    const digits = [...text];
    [digits[first], digits[second]] = [digits[second] ?? "", digits[first] ?? ""];
    return [{ kind: "digitsSwapped", value: Math.sign(value) * Number(digits.join("")) }];
  });
  const moved = [value * 10, Number((value / 10).toFixed(decimalsOf(step)))];
  return [
    { kind: "minusSign", value: -value },
    ...swapped,
    ...moved.map((one): Slip => ({ kind: "decimalPoint", value: one })),
  ];
}
