import { toSi } from '../calculations/units.ts';

export interface Thread {
  /** As cut on the stem, tidied: `1/2-20`, `M12x1.25`. */
  readonly text: string;
  readonly pitchM: number;
}

export interface ThreadFault {
  readonly fault: string;
}

const SPACED = String.raw`\s*`;
/** Threads to the inch: size, dash, count; the name of the series may follow. */
const INCH = new RegExp(
  String.raw`^((?:\d+\s+)?\d+(?:/\d+)?)${SPACED}-${SPACED}(\d{1,2}(?:\.\d)?)${SPACED}(?:UN[A-Z]{0,2})?(?:-?[1-3][AB])?$`,
  'i',
);
const METRIC = new RegExp(
  String.raw`^M${SPACED}(\d{1,3}(?:[.,]\d)?)${SPACED}[x×*]${SPACED}(\d(?:[.,]\d{1,2})?)(?:${SPACED}-${SPACED}\d[a-z])?$`,
  'i',
);

/**
 * Reads a thread as it is cut on a part. The pitch must stand in the text: the usual series name two threads for
 * 1 in, and which one a stem has is read off the stem.
 *
 * @returns the thread with its pitch, or why it is refused
 * @example readThread('1/2-20') // { text: '1/2-20', pitchM: 0.00127 }
 * @example readThread('M12 x 1,25') // { text: 'M12x1.25', pitchM: 0.00125 }
 * @example readThread('M12') // { fault: '“M12” has no pitch. ...' }
 */
export function readThread(typed: string): Thread | ThreadFault {
  const tidy = typed.trim().replaceAll(/\s+/g, ' ');
  if (/\bLH\b|left/i.test(tidy)) {
    return {
      fault: `“${tidy}” is left-handed: every turning direction here would be wrong. Use the maker’s manual.`,
    };
  }
  const metric = tidy.match(METRIC);
  if (metric !== null) return metricThread(tidy, metric);
  const inch = tidy.match(INCH);
  if (inch !== null) return inchThread(tidy, inch);
  if (/^(M\s*\d+(?:[.,]\d+)?|\d+(?:\/\d+)?)\s*("|in\.?)?$/i.test(tidy)) {
    return { fault: `“${tidy}” has no pitch. Write it too, read off the part: 1/2-20 or M12x1.25.` };
  }
  return { fault: `“${tidy}” is not a thread. Write size and pitch: 1/2-20 or M12x1.25.` };
}

function inchThread(typed: string, [, size = '', count = '']: RegExpMatchArray): Thread | ThreadFault {
  const threadsPerInch = Number(count);
  if (threadsPerInch < 4 || threadsPerInch > 80) {
    return { fault: `“${typed}” has ${count} threads to the inch; a stem has 4 to 80. Read it again.` };
  }
  return { text: `${size}-${count}`, pitchM: toSi({ value: 1 / threadsPerInch, unit: 'in' }) };
}

function metricThread(typed: string, [, size = '', pitch = '']: RegExpMatchArray): Thread | ThreadFault {
  const [diameterMm, pitchMm] = [size, pitch].map((text) => Number(text.replace(',', '.')));
  if (!diameterMm || !pitchMm || pitchMm < 0.2 || pitchMm > diameterMm / 2) {
    return {
      fault: `“${typed}” has a pitch of ${pitch} mm, which does not fit its diameter. Read it again.`,
    };
  }
  return { text: `M${diameterMm}x${pitchMm}`, pitchM: toSi({ value: pitchMm, unit: 'mm' }) };
}
