/**
 * JPEG (ITU-T T.81), read segment by segment: tables, one frame, its scans, the end. Frames are taken as cameras and
 * screens write them: baseline, extended or progressive by Huffman, 8 bits, one, three or four components.
 */
import { orientationAlone, orientationIn, type Size } from './exif.ts';
import { broken, moreBehind, notTaken } from './refusals.ts';
import { requireSize } from './require-size.ts';
import type { Stripped } from './stripped.ts';

const END = 0xd9;
const SCAN = 0xda;
/** Tables of quantization and Huffman codes, restart interval. */
const TABLES: readonly number[] = [0xdb, 0xc4, 0xdd];
const FRAMES: readonly number[] = [0xc0, 0xc1, 0xc2];
/** Lossless, differential and arithmetic frames, and what belongs to them. */
const OTHER_FRAMES: readonly number[] = [
  0xc3, 0xc5, 0xc6, 0xc7, 0xc8, 0xc9, 0xca, 0xcb, 0xcc, 0xcd, 0xce, 0xcf, 0xdc, 0xde, 0xdf,
];
const isApplication = (marker: number): boolean => marker >= 0xe0 && marker <= 0xef;
const COMMENT = 0xfe;
/** A progressive picture has a dozen. */
const SCANS_MAX = 100;

interface Frame extends Size {
  readonly components: number;
  /** Minimum coded units: no scan of all components has fewer bits than one a component of each. */
  readonly units: number;
}

interface Reading {
  readonly kept: Buffer[];
  orientation: number;
  isJfif: boolean;
  frame: Frame | null;
  scans: number;
  scanBytes: number;
}

/** @throws Refusal PHO-004 to PHO-007 */
export function readJpeg(bytes: Buffer): Stripped {
  const reading: Reading = { kept: [], orientation: 1, isJfif: false, frame: null, scans: 0, scanBytes: 0 };
  let at = 2;
  for (;;) {
    const { marker, from } = markerAt(bytes, at);
    if (marker === END) {
      requireOnlyCameraBehind(bytes.subarray(from));
      return finished(reading);
    }
    const end = from + segmentLength(bytes, from);
    if (end > bytes.length) throw broken('it ends too early');
    takeSegment(reading, {
      marker,
      body: bytes.subarray(from + 2, end),
      whole: bytes.subarray(from - 2, end),
    });
    at = end;
    if (marker !== SCAN) continue;
    at = scanEnd(bytes, end);
    reading.scanBytes += at - end;
    reading.kept.push(bytes.subarray(end, at));
  }
}

/** Any number of fill bytes may stand before a marker. */
function markerAt(bytes: Buffer, at: number): { readonly marker: number; readonly from: number } {
  if (bytes[at] !== 0xff)
    throw broken(at >= bytes.length ? 'it ends too early' : 'a marker is missing in it');
  let next = at + 1;
  while (bytes[next] === 0xff) next += 1;
  const marker = bytes[next];
  if (marker === undefined) throw broken('it ends too early');
  return { marker, from: next + 1 };
}

function segmentLength(bytes: Buffer, at: number): number {
  if (at + 2 > bytes.length) throw broken('it ends too early');
  const length = bytes.readUInt16BE(at);
  if (length < 2) throw broken('a part of it has no length');
  return length;
}

function takeSegment(
  reading: Reading,
  { marker, body, whole }: { readonly marker: number; readonly body: Buffer; readonly whole: Buffer },
): void {
  if (OTHER_FRAMES.includes(marker)) throw notTaken('a JPEG of a seldom coding');
  if (isApplication(marker) || marker === COMMENT) {
    takeAside(reading, { marker, body });
    return;
  }
  if (FRAMES.includes(marker)) {
    if (reading.frame !== null) throw broken('it has two frames');
    reading.frame = frameOf(body);
  } else if (marker === SCAN) {
    reading.scans += 1;
    const components = body[0] ?? 0;
    if (reading.frame === null || components < 1 || body.length !== 4 + 2 * components)
      throw broken('a scan in it does not fit its frame');
    if (reading.scans > SCANS_MAX) throw broken(`it has more than ${SCANS_MAX} scans`);
  } else if (!TABLES.includes(marker)) throw broken('it has a part that no picture has');
  reading.kept.push(Buffer.from([0xff, marker]), whole.subarray(2));
}

/** Of what stands beside the picture: which way is up, and how its colours are to be read. */
function takeAside(
  reading: Reading,
  { marker, body }: { readonly marker: number; readonly body: Buffer },
): void {
  if (marker === 0xe1 && body.toString('latin1', 0, 6) === 'Exif\0\0')
    reading.orientation = orientationIn(body.subarray(6));
  if (marker === 0xe0 && body.toString('latin1', 0, 5) === 'JFIF\0') reading.isJfif = true;
  if (marker === 0xee && body.length >= 12 && body.toString('latin1', 0, 5) === 'Adobe')
    reading.kept.push(segment(marker, body.subarray(0, 12)));
}

function segment(marker: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
}

function frameOf(body: Buffer): Frame {
  const components = body[5] ?? 0;
  if (body.length < 6 || body.length !== 6 + 3 * components) throw broken('its frame is not whole');
  if (body[0] !== 8 || ![1, 3, 4].includes(components)) throw notTaken('a JPEG of a seldom coding');
  const size = { heightPx: body.readUInt16BE(1), widthPx: body.readUInt16BE(3) };
  if (size.heightPx === 0 || size.widthPx === 0) throw broken('it has no size');
  requireSize(size);
  const samplings = Array.from({ length: components }, (_, at) => body[7 + 3 * at] ?? 0);
  const [across, down] = [
    Math.max(...samplings.map((one) => one >> 4)),
    Math.max(...samplings.map((one) => one & 15)),
  ];
  if (samplings.some((one) => one >> 4 < 1 || one >> 4 > 4 || (one & 15) < 1 || (one & 15) > 4))
    throw broken('its frame is not whole');
  const units = Math.ceil(size.widthPx / (8 * across)) * Math.ceil(size.heightPx / (8 * down));
  return { ...size, components, units };
}

/** Where the coded bytes of a scan end: at the next marker that is no stuffed byte and no restart. */
function scanEnd(bytes: Buffer, from: number): number {
  let at = from;
  for (;;) {
    at = bytes.indexOf(0xff, at);
    if (at < 0 || at + 1 >= bytes.length) throw broken('it ends too early');
    const next = bytes[at + 1] ?? 0;
    const goesOn = next === 0 || (next >= 0xd0 && next <= 0xd7);
    if (!goesOn && next !== 0xff) return at;
    at += next === 0xff ? 1 : 2;
  }
}

/**
 * Cameras put a second picture or notes of their own behind the first. That is cut off, as all else that is not the
 * picture; anything that no camera puts there is refused, since somebody made it.
 */
function requireOnlyCameraBehind(behind: Buffer): void {
  const isPicture = behind[0] === 0xff && behind[1] === 0xd8 && behind[2] === 0xff;
  const isNotes = behind.length >= 8 && behind.toString('latin1', behind.length - 4) === 'SEFT';
  if (isPicture || isNotes || behind.every((byte) => byte === 0)) return;
  throw moreBehind(behind.length);
}

/** Says how the colours are to be read, and nothing of the camera. */
const JFIF = segment(0xe0, Buffer.from('JFIF\0\x01\x01\0\0\x01\0\x01\0\0', 'latin1'));

function finished({ kept, orientation, isJfif, frame, scans, scanBytes }: Reading): Stripped {
  if (frame === null || scans === 0) throw broken('there is no picture in it');
  // Each component of each unit takes a bit at least: less is a picture that was cut, or one that unpacks to far too much.
  if (8 * scanBytes < frame.units * frame.components) throw broken('most of the picture is missing');
  const turned =
    orientation === 1
      ? []
      : [segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), orientationAlone(orientation)]))];
  const bytes = Buffer.concat([
    Buffer.of(0xff, 0xd8),
    ...(isJfif ? [JFIF] : []),
    ...turned,
    ...kept,
    Buffer.of(0xff, END),
  ]);
  return { bytes, orientation, widthPx: frame.widthPx, heightPx: frame.heightPx };
}
