import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readCsv, readJsonReadings } from "../../../packages/dsl/src/measure/read-readings.ts";

const two = [
  { servo: "", pulseUs: 1500, deflectionDeg: 0 },
  { servo: "", pulseUs: 1600, deflectionDeg: 9.5, way: "back" },
];

describe("readCsv", () => {
  test.each([
    ["1500,0\n1600,9.5,back\n"],
    ["pulse,deflection,way\n1500,0,\n1600,9.5,back"],
    ["\uFEFFdeflection (deg);pulse (us);way\r\n0;1500;\r\n9,5;1600;back\r\n"],
    ["# a logger's remark\n\n1500\t0\n1600\t9.5\tback\n"],
    ['"pulse_us","deflection_deg","way"\n"1500","0",""\n"1600","9.5","back"'],
  ])("reads the same two readings from %j", (text) => {
    expect(readCsv(text)).toEqual({ readings: two });
  });

  test("gives back any table that is written out", () => {
    const reading = fc.record({
      servo: fc.constantFrom("", "flap", "rudder.upper"),
      pulseUs: fc.integer({ min: 1000, max: 50_000 }).map((tenths) => tenths / 10),
      deflectionDeg: fc.integer({ min: -1200, max: 1200 }).map((tenths) => tenths / 10),
    });
    const separators = fc.constantFrom(",", ";", "\t");
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 20 }), separators, (readings, separator) => {
        // -0 is written 0.
        const table = readings.map((one) => ({ ...one, deflectionDeg: one.deflectionDeg + 0 }));
        const lines = table.map((one) => [one.servo, one.pulseUs, one.deflectionDeg].join(separator));
        const head = ["servo", "pulse", "deflection"].join(separator);
        expect(readCsv([head, ...lines].join("\n"))).toEqual({ readings: table });
      }),
    );
  });

  test.each([
    ["", "it holds no readings"],
    ["# nothing\n", "it holds no readings"],
    ["pulse,deflection\n", "it holds no readings"],
    ["pulse,angle\n1500,0", 'line 1: the column "angle" is none of servo, pulse, deflection, way'],
    ["pulse,pulse\n1500,0", 'line 1: there are two columns "pulse"'],
    ["pulse,way\n1500,out", 'line 1: there is no column "deflection"'],
    ["1500,0\n99,0", 'line 2: "99" is no pulse from 100 to 5000 us'],
    ["1500,0\n1600", 'line 2: "" is no deflection from -120 to 120 deg'],
    ["1500,0\n1600,9,up", 'line 2: "up" is no way; there is out and back'],
    ["1500,0\n1600,9,back,x", "line 2: there are 4 values for 3 columns"],
    ["1500,0x10", 'line 1: "0x10" is no deflection from -120 to 120 deg'],
  ])("of %j says %j", (text, problem) => {
    expect(readCsv(text)).toEqual({ problem });
  });

  test("takes no more readings of one servo than can be judged in time", () => {
    const rows = Array.from({ length: 201 }, (_, index) => `${1000 + index},${index / 10}`);
    expect(readCsv(rows.slice(1).join("\n"))).toHaveProperty("readings");
    expect(readCsv(rows.join("\n"))).toHaveProperty("problem");
  });
});

describe("readJsonReadings", () => {
  test("reads a list of readings, and lists by servo", () => {
    const flap = two.map((one) => ({ ...one, servo: "flap" }));
    const list = [
      { servo: "flap", pulse: 1500, deflection: 0 },
      { servo: "flap", pulse: 1600, deflection: 9.5, way: "back" },
    ];
    expect(readJsonReadings(list)).toEqual({ readings: flap });
    expect(
      readJsonReadings({
        flap: [
          [1500, 0],
          [1600, 9.5, "back"],
        ],
      }),
    ).toEqual({ readings: flap });
    expect(
      readJsonReadings([
        [1500, 0],
        [1600, 9.5, "back"],
      ]),
    ).toEqual({ readings: two });
  });

  test.each([
    [3, "it is neither a list of readings nor an object of such lists"],
    [[], "it holds no readings"],
    [{ flap: 3 }, '"flap" is no list of readings'],
    [[{ pulse: 1500, angle: 3 }], 'reading 1: "angle" is none of servo, pulse, deflection, way'],
    [{ flap: [[1500, null]] }, '"flap", reading 1: null is no deflection from -120 to 120 deg'],
    [[{ pulse: 1500, deflection: 0, servo: 3 }], "reading 1: 3 is no name of a servo"],
  ])("of %j says %j", (data, problem) => {
    expect(readJsonReadings(data)).toEqual({ problem });
  });
});
