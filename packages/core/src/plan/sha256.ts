import { powerOf } from "../numeric/power.ts";

/**
 * The SHA-256 digest of a text's UTF-8 bytes as 64 lower-case hexadecimal digits. Pure, for short documents; it keeps no secret. The text
 * holds no lone surrogate. Source: FIPS 180-4, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.
 */
export function sha256(text: string): string {
  const words = pad(utf8(text));
  const hash = [...initialHash];
  const schedule = new Uint32Array(64);
  for (let block = 0; block < words.length; block += 16) {
    for (let t = 0; t < 64; t++) {
      const at = (back: number) => schedule[t - back] ?? 0;
      schedule[t] =
        t < 16 ? (words[block + t] ?? 0) : smallSigma1(at(2)) + at(7) + smallSigma0(at(15)) + at(16);
    }
    let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = hash;
    for (let t = 0; t < 64; t++) {
      const choice = (e & f) ^ (~e & g);
      const majority = (a & b) ^ (a & c) ^ (b & c);
      const first = (h + bigSigma1(e) + choice + (constants[t] ?? 0) + (schedule[t] ?? 0)) | 0;
      const second = (bigSigma0(a) + majority) | 0;
      [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
    }
    for (const [index, value] of [a, b, c, d, e, f, g, h].entries())
      hash[index] = ((hash[index] ?? 0) + value) | 0;
  }
  return hash.map((word) => (word >>> 0).toString(16).padStart(8, "0")).join("");
}

const primes = firstPrimes(64);
/** The first 32 bits of the fractional parts of the square roots of the first eight primes. */
const initialHash = primes.slice(0, 8).map((prime) => fraction32(Math.sqrt(prime)));
/** The same of the cube roots of the first sixty-four primes. */
const constants = primes.map((prime) => fraction32(powerOf(prime, 1 / 3)));

function firstPrimes(count: number): number[] {
  const found: number[] = [];
  for (let candidate = 2; found.length < count; candidate++)
    if (found.every((prime) => candidate % prime !== 0)) found.push(candidate);
  return found;
}

function fraction32(value: number): number {
  return Math.floor((value - Math.floor(value)) * 2 ** 32) | 0;
}

/** The message in whole blocks of sixteen big-endian words: a bit 1, zeros, and its length in bits in the last two words. */
function pad(bytes: readonly number[]): Uint32Array {
  const words = new Uint32Array(Math.ceil((bytes.length + 9) / 64) * 16);
  for (const [index, byte] of [...bytes, 0x80].entries())
    words[index >> 2] = (words[index >> 2] ?? 0) | (byte << (24 - 8 * (index % 4)));
  words[words.length - 2] = Math.floor(bytes.length / 2 ** 29);
  words[words.length - 1] = bytes.length << 3;
  return words;
}

/** Source: RFC 3629, section 3. */
function utf8(text: string): number[] {
  const bytes: number[] = [];
  const tail = (code: number, shift: number) => 0x80 | ((code >> shift) & 0x3f);
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), tail(code, 0));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), tail(code, 6), tail(code, 0));
    else bytes.push(0xf0 | (code >> 18), tail(code, 12), tail(code, 6), tail(code, 0));
  }
  return bytes;
}

function turn(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

function bigSigma0(word: number): number {
  return turn(word, 2) ^ turn(word, 13) ^ turn(word, 22);
}

function bigSigma1(word: number): number {
  return turn(word, 6) ^ turn(word, 11) ^ turn(word, 25);
}

function smallSigma0(word: number): number {
  return turn(word, 7) ^ turn(word, 18) ^ (word >>> 3);
}

function smallSigma1(word: number): number {
  return turn(word, 17) ^ turn(word, 19) ^ (word >>> 10);
}
