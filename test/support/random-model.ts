import type {
  Bench,
  Control,
  Group,
  Model,
  Moves,
  Place,
  Reading,
  Servo,
  Surface,
} from "../../packages/core/src/model/model.ts";
import type { Random } from "../../packages/core/src/uncertainty/random.ts";
import { deg, mm, pct, us } from "../../packages/core/src/units/quantity.ts";

/**
 * A model of up to 8 surfaces, 4 selectors and 5 sticks from a seeded generator: servos alone, in pairs on one surface and on Y leads, with and
 * without readings, groups, trims, levers, moves per selector, yields, both kinds of end points. Most compile; many saturate.
 */
export function randomModel(random: Random): Model {
  const pick = <T>(list: readonly [T, ...T[]]): T => list[Math.floor(random() * list.length)] ?? list[0];
  const between = (low: number, high: number) => low + random() * (high - low);
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  const chance = (share: number) => random() < share;

  let channel = 0;
  const bench = (rising: boolean, isRead = chance(0.9)): Bench => {
    const sign = rising ? 1 : -1;
    const level = Math.round(between(1350, 1650));
    const [above, below] = [whole(0, 3), whole(1, 4)];
    const points: [number, number][] = [[level, 0]];
    for (const [count, way] of [
      [above, -1],
      [below, 1],
    ] as const) {
      let [pulse, angle] = [level, 0];
      for (let i = 0; i < count; i++) {
        const span = between(40, 120);
        pulse += sign * way * span;
        angle += way * span * between(0.04, 0.13);
        points.push([Math.round(pulse), Number(angle.toFixed(1))]);
      }
    }
    const pulses = points.map(([pulse]) => pulse);
    const [low, high] = [Math.min(...pulses), Math.max(...pulses)];
    const readings = points.map(([pulse, angle]): Reading => [us(pulse), deg(angle)]);
    return {
      ...(above > 0 ? { up: us(rising ? low : high) } : {}),
      level: us(level),
      down: us(rising ? high : low),
      ...(chance(0.3) ? { guard: us(whole(0, 15)) } : {}),
      ...(isRead ? { readings } : {}),
    };
  };
  const servo = (over: Partial<Servo> = {}): Servo => ({
    channel: ++channel,
    bench: bench(chance(0.5)),
    ...(chance(0.1) ? { added: us(whole(1, 20)) } : {}),
    ...over,
  });

  const surfaces: Record<string, Surface> = {};
  const groups: Record<string, Group> = {};
  const count = whole(1, 8);
  for (let i = 0; i < count; i++) {
    // Servos of one surface are read alike, and nothing is allowed in degrees where none are known.
    const isRead = chance(0.9);
    const own = () => servo({ bench: bench(chance(0.5), isRead) });
    const allowed = isRead ? { allowed: [deg(-25), deg(45)] as const } : {};
    const facts = chance(0.3) ? { chord: mm(whole(30, 90)), ...allowed } : {};
    if (chance(0.1)) surfaces[`surface${i}`] = { ...facts, servos: { upper: own(), lower: own() } };
    else surfaces[`surface${i}`] = { ...facts, servo: own() };
  }
  const names = Object.keys(surfaces);
  const [first = "surface0", second] = names;
  let isJoined = false;
  if (second !== undefined) {
    const members = [first, second];
    groups.pair = chance(0.7)
      ? { kind: "matched", surfaces: members, within: deg(1) }
      : { kind: "together", surfaces: members };
    if (chance(0.15)) {
      isJoined = true;
      const rising = chance(0.5);
      const lead = () => ({ servo: { ...servo(), channel: 32, yLead: true, bench: bench(rising) } as const });
      surfaces[first] = lead();
      surfaces[second] = lead();
    }
  }

  const controls: Record<string, Control> = {};
  const detents = (number: number) => ["a", "b", "c", "d"].slice(0, number);
  for (let i = whole(1, 4); i > 0; i--)
    controls[`selector${i}`] = { kind: "selector", detents: detents(whole(1, 4)) };
  for (let i = whole(0, 5); i > 0; i--)
    controls[`stick${i}`] = {
      kind: "stick",
      trim: pct(pick([0, 0, 5, 10, 25])),
      rests: pick([0, 0, 0, -1, 1] as const),
    };
  // What a Y lead joins is mostly asked for the same.
  const alone = isJoined && chance(0.9) ? names.slice(2) : names;
  const targets = second === undefined ? names : ["pair", ...alone];

  const servosOf = (target: string): readonly Servo[] =>
    (target === "pair" ? [first, second ?? first] : [target]).flatMap((name) => {
      const { servo, servos } = surfaces[name] ?? {};
      return servo === undefined ? Object.values(servos ?? {}) : [servo];
    });
  // Most places are within what was measured on all servos, so that the sums of a few are too; some are anywhere.
  const place = (target: string, share: number): Place => {
    const benches = servosOf(target).map((one) => one.bench);
    if (benches.some(({ readings }) => readings === undefined))
      return { kind: "part", part: Number((Math.abs(share) * between(0, 1)).toFixed(2)) };
    const angles = benches.map(({ readings = [] }) => readings.map(([, angle]) => Number(angle)));
    const [low, high] = [
      Math.max(...angles.map((one) => Math.min(...one))),
      Math.min(...angles.map((one) => Math.max(...one))),
    ];
    const anywhere = between(-15, 30) * share;
    const inside = share > 0 ? between(low * 0.3, high) * share : between(low, high * 0.3) * -share;
    return deg(Number((chance(0.03) ? anywhere : inside * 0.5).toFixed(1)));
  };
  const targetsOf = (share: number) => {
    const chosen = targets.filter(() => chance(share));
    // A surface gets one place only: by its own name or by its group's.
    return chosen[0] === "pair" ? chosen.filter((name) => name !== first && name !== second) : chosen;
  };
  const selectorMoves = (number: number) =>
    Object.fromEntries(
      detents(number).map((detent) => [
        detent,
        Object.fromEntries(targetsOf(0.4).map((name) => [name, place(name, 0.7)])),
      ]),
    );
  const stickMoves = () =>
    Object.fromEntries(targetsOf(0.3).map((name) => [name, [place(name, -0.4), place(name, 0.4)] as const]));
  const moves: Record<string, Moves> = {};
  const selectors = Object.entries(controls).flatMap(([name, control]) =>
    control.kind === "selector" ? [[name, control.detents.length] as const] : [],
  );
  for (const [name, control] of Object.entries(controls)) {
    const plain = () => (control.kind === "selector" ? selectorMoves(control.detents.length) : stickMoves());
    const [per, number] = selectors[0] ?? ["", 0];
    moves[name] =
      per !== name && chance(0.25)
        ? { per, cases: Object.fromEntries(detents(number).map((detent) => [detent, plain()])) }
        : plain();
  }
  const yielding = Object.keys(controls).filter(() => chance(0.5));
  return {
    format: "hingeline/model",
    version: 1,
    name: "Random",
    radio: {
      name: "any",
      centre: us(whole(1480, 1530)),
      per100: chance(0.2) ? { below: us(whole(400, 600)), above: us(whole(400, 600)) } : us(whole(380, 620)),
      reach: pct(pick([100, 125, 150])),
      step: pct(pick([0.1, 0.2, 0.5, 1, 2])),
      endPoints: pick(["clamp", "scale"] as const),
      curvePoints: chance(0.04) ? pick([2, 3, 5, 9]) : 0,
      curveSpacing: pick(["equal", "free"] as const),
    },
    surfaces,
    groups,
    controls,
    moves,
    ...(chance(0.5) && yielding.length > 0
      ? { yields: { [pick(names as [string, ...string[]])]: yielding } }
      : {}),
  };
}
