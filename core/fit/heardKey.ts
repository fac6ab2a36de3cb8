import type { WearReading, WearSeries } from '../series/wearSeries.ts';

/**
 * Short name of what a machine's parts of one class had to say, to see whether it has changed: whichever order the parts come in,
 * and whatever they are numbered.
 * @source FNV-1a, 32 bits, twice over: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, "The FNV non-cryptographic hash algorithm"
 */
export function heardKey(read: readonly WearSeries[]): string {
  let a = 0;
  let b = 0;
  for (const series of read) {
    begin();
    addNumber(series.newSizeSdMm);
    addNumber(series.startHoursSd);
    addNumber(series.expectedLnHarshness ?? 0);
    series.readings.forEach(addReading);
    // the sum of all parts is the same in any order
    a = (a + first) | 0;
    b = (b + second) | 0;
  }
  return `${(a >>> 0).toString(16)}-${(b >>> 0).toString(16)}`;
}

/** All these parts have to say has been heard. @param heard what the class holds of their machine */
export const hasHeard = (heard: { key: string } | undefined, read: readonly WearSeries[]): boolean =>
  heard === undefined ? read.length === 0 : heard.key === heardKey(read);

let first = 0;
let second = 0;

function begin(): void {
  first = 0x811c9dc5;
  second = 0x1234567;
}

function add(word: number): void {
  first = Math.imul(first ^ word, 0x01000193);
  second = Math.imul(second ^ word, 0x01000193) ^ (second >>> 15);
}

const number = new Float64Array(1);
const words = new Uint32Array(number.buffer);

function addNumber(value: number): void {
  number[0] = value;
  add(words[0]!);
  add(words[1]!);
}

function addText(text: string): void {
  for (let i = 0; i < text.length; i++) add(text.charCodeAt(i));
}

function addReading({ takenOn, visit, workedHours, workedHoursSd, wearMm, errorSdMm }: WearReading): void {
  addText(takenOn);
  addText(visit);
  addNumber(workedHours);
  addNumber(workedHoursSd);
  addNumber(wearMm);
  addNumber(errorSdMm);
}
