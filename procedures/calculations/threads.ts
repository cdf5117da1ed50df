import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, refuseOutside } from './checks.ts';
import { convert } from './units.ts';

/** Fine threads that valve stems are cut with, ASME B1.1 UNF. 1-14 is UNS: open lists that call it UNF are wrong. */
const UNF = [
  '1/4-28',
  '5/16-24',
  '3/8-24',
  '7/16-20',
  '1/2-20',
  '5/8-18',
  '3/4-16',
  '7/8-14',
  '1-12',
  '1 1/4-12',
  '1 1/2-12',
];
const UNS = ['1-14'];

export interface Thread {
  readonly diameterM: number;
  readonly threadsPerInch: number;
  readonly pitchM: number;
  /** `unlisted`: read the thread off the part. */
  readonly series: 'UNF' | 'UNS' | 'unlisted';
}

/**
 * Diameter and pitch of an inch thread as it is written.
 *
 * Shape: a text in, numbers out.
 * Valid: single-start inch threads, written as size, dash, threads per inch.
 * @param thread  for example `1/2-20` or `1 1/4-12`
 * @returns diameter, threads per inch, pitch, and the series where it is a listed one
 * @throws CalcError CALC-005 if the text is no thread
 * @source [S-17] thread sizes; the pitch is one inch over the threads per inch
 * @example threadFromText('1/2-20') // { diameterM: 0.0127, threadsPerInch: 20, pitchM: 0.00127, series: 'UNF' }
 * @example threadFromText('1-14').series // 'UNS'
 */
export function threadFromText(thread: string): Thread {
  const match = /^(?:(\d+)(?:\s+|$|(?=-)))?(?:(\d+)\/(\d+))?-(\d+)$/.exec(thread.trim());
  const [whole, over, under, count] = (match?.slice(1) ?? []).map((part) =>
    part === undefined ? 0 : Number(part),
  );
  const sizeIn = (whole ?? 0) + (under ? (over ?? 0) / under : 0);
  if (!count || sizeIn <= 0) {
    throw new CalcError({ code: 'CALC-005', name: 'thread', value: thread, range: 'as in 1/2-20', unit: '' });
  }
  const plain = thread.trim().replace(/\s+/g, ' ');
  return {
    diameterM: convert({ value: sizeIn, from: 'in', to: 'm' }),
    threadsPerInch: count,
    pitchM: convert({ value: 1 / count, from: 'in', to: 'm' }),
    series: UNF.includes(plain) ? 'UNF' : UNS.includes(plain) ? 'UNS' : 'unlisted',
  };
}

export interface ThreadAreas {
  readonly stressAreaM2: number;
  readonly rootDiameterM: number;
  readonly rootAreaM2: number;
}

/**
 * Tensile stress area and root area of an inch thread.
 *
 * Shape: diameter and pitch in, areas out. As = π/4 · (D − 0.9743 p)²; root diameter D − 1.29904 p
 * Valid: 60 degree unified threads.
 * @param diameterM  nominal; above 0
 * @param pitchM     above 0, so small that the root is not gone
 * @returns stress area, root diameter and root area
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-17] stress area and minor diameter
 * @example threadAreas({ diameterM: 0.0127, pitchM: 0.00127 }) // { stressAreaM2: 1.031953e-4, rootDiameterM: 0.0110502, rootAreaM2: 9.59029e-5 }
 */
export function threadAreas(input: { readonly diameterM: number; readonly pitchM: number }): ThreadAreas {
  const { diameterM, pitchM } = input;
  refuseOutside({ diameterM }, ABOVE_ZERO);
  refuseOutside({ pitchM }, { above: 0, below: diameterM / 1.3 });
  const rootDiameterM = diameterM - 1.29904 * pitchM;
  return {
    // The standard prints 0.7854 for a quarter of pi.
    stressAreaM2: 0.7854 * (diameterM - 0.9743 * pitchM) ** 2,
    rootDiameterM,
    rootAreaM2: (Math.PI / 4) * rootDiameterM ** 2,
  };
}
