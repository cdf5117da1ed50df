import { extractText, getDocumentProxy } from 'unpdf';
import { describe, expect, test } from 'vitest';
import { fromSi } from '../../../../procedures/calculations/units.ts';
import { SETTINGS } from '../../../../procedures/commissioning/settings.ts';
import { seatTestOf } from '../../../../procedures/seat-test.ts';
import type { ValveSheet } from '../../../../procedures/valve-sheet/sheet.ts';
import { forcesDrawn, forcesOf } from '../../../../server/jobs/record/forces.ts';
import { leakResults } from '../../../../server/jobs/record/leaks.ts';
import { recordOf } from '../../../../server/jobs/record.ts';
import { sentenceOf } from '../../../../server/record-pdf/draw-svg.ts';
import { pdfFaces } from '../../../../server/record-pdf/faces.ts';
import { recordPdf } from '../../../../server/record-pdf/record-pdf.ts';
import type { LogEntry } from '../../../../server/store/store.ts';
import { jobOn, play } from '../../../builders/answers.ts';
import { gearFor, gearItem } from '../../../builders/gear.ts';
import { jobAt } from '../../../builders/jobs.ts';
import { aSheet } from '../../../builders/sheets.ts';

const served = SETTINGS.find(({ definition }) => definition.id === 'seat-leak-test');
if (served === undefined) throw new Error('it is not served');
const seat = served;

const DIGEST = 'ab'.repeat(32);

/** Five minutes of a glass, of a share of what this valve may leak. */
function tested(share: number, to?: string) {
  const sheet: ValveSheet = aSheet();
  const ml = fromSi({ valueSi: 300 * share * seatTestOf(sheet).allowedM3PerS, unit: 'ml' });
  const measure = { seatTestPa: '50 psi', leakBy: 'glass', leakTimeS: '300 s', leakVolumeM3: `${ml} ml` };
  const off = { seatTestPa: '', seatZeroPa: '0 psi', method: 'gauge' };
  const offs = { letOffTight: off, letOffLeaking: off, letOffAgain: off, ventSeat: off };
  const pressOn = { seatTestPa: '50 psi', jointsTight: 'yes' };
  const gear = { ...gearFor('bench'), seatGauge: gearItem('seatGauge') };
  const run = jobOn(seat, { sheet, place: 'bench', gear });
  run.shownDigest = DIGEST;
  return play(run, { overrides: { ...offs, pressOn, measure }, ...(to === undefined ? {} : { to }) });
}

const numbersIn = (text: string) => Number(text.replace('\u2212', '-').replace('+', '').split(' ')[0]);

describe('The record of a seat test', () => {
  test('says what came through, against its class, with what the measurement gives; the document says all of it', async () => {
    const run = tested(0.5);
    const [row] = leakResults(run.job);
    expect(row?.label).toMatch(/^seat leakage, m?l\/min$/);
    expect(Number(row?.asLeft) / Number(row?.limit)).toBeCloseTo(0.5, 2);
    expect(row).toMatchObject({ asFound: '', leftOutside: false });
    // A glass, a watch and the air of a room are known to 5 % together: common practice, no source.
    expect(row?.verdict).toMatch(/^as left inside; measured to [\d.]+ either way$/);
    expect(Number(/to ([\d.]+)/.exec(row?.verdict ?? '')?.[1]) / Number(row?.asLeft)).toBeCloseTo(0.05, 3);

    const bare = { stream: 'job:1', screen: 'test', codeVersion: 'test', requestId: null };
    const links = { previousHash: '', previousInStream: '', hash: DIGEST };
    const entries: LogEntry[] = run.entries.map((entry) => ({ ...bare, ...links, ...entry }));
    const names = new Map<string, string>();
    const sheets = recordOf({ entries, compiled: run.compiled, names, plant: 'Plant', nowMs: run.nowMs });
    const { results, forces } = sheets.record;
    expect(results).toContainEqual(row);
    const bytes = await recordPdf(sheets, { size: 'a4', printedAtMs: run.nowMs, faces: pdfFaces() });
    const { text } = await extractText(await getDocumentProxy(bytes), { mergePages: true });
    const close = (one: string) => one.replaceAll(/\s+/g, '').toLowerCase();
    const said = [
      ...results.flatMap((one) => Object.values(one)),
      ...(forces?.rows ?? []).flatMap((row) => Object.values(row)),
      ...(forces?.more ?? []).flatMap((row) => Object.values(row)),
    ];
    for (const one of said.filter((value) => typeof value === 'string'))
      expect(close(text)).toContain(close(one));
  });

  test('boxes a seat that leaks', () => {
    expect(leakResults(tested(3, 'letOffLeaking').job)).toMatchObject([{ leftOutside: true }]);
  });
});

describe('The force balance of a record', () => {
  test('adds up, term by term, to what is left on the seat', () => {
    for (const sheet of [
      aSheet(),
      aSheet({ flow: 'over' }),
      aSheet({
        positioner: 'pneumatic',
        airMovesStem: 'down',
        airAction: 'air-to-close',
        failPosition: 'open',
      }),
    ]) {
      const { job } = jobAt('rigGauges', { sheet: aSheet(), place: 'bench' });
      const rows = forcesOf({ ...job, sheet })?.rows ?? [];
      const [spring = 0, air = 0, process = 0, friction = 0, left = 0] = rows.map(({ shut }) =>
        numbersIn(shut),
      );
      expect(Math.abs(spring + air + process + friction - left)).toBeLessThanOrEqual(2);
      expect(friction).toBeLessThanOrEqual(0);
      expect(process < 0).toBe(sheet.flow === 'under');
      const [openSpring = 0, openAir = 0, , openFriction = 0, openLeft = 0] = rows.map(({ open }) =>
        numbersIn(open),
      );
      expect(Math.abs(openSpring + openAir + openFriction - openLeft)).toBeLessThanOrEqual(2);
      expect(rows[2]?.open).toBe('not counted');
    }
  });

  test('is worked by hand for a spring that shuts: area times both ends of the bench set, and the signal against it', () => {
    const { job } = jobAt('rigGauges', { place: 'bench' });
    expect(job.sheet.airAction).toBe('air-to-open');
    // 100 in2 at 3 psi and at 15 psi; no positioner, so that no more than 15 psi comes to the case.
    const { rows, shut, open } = forcesOf(job) ?? { rows: [], shut: '', open: '' };
    expect(rows.slice(0, 2)).toEqual([
      { label: 'spring', shut: '+300 lbf', open: '+1500 lbf' },
      { label: 'air times area', shut: '0 lbf', open: '\u22121500 lbf' },
    ]);
    expect([shut, open]).toEqual(['Shut, with no air on the case', 'Open, with 15.00 psi on the case']);
    // What is left there is the friction: nothing presses it on its stop.
    expect(rows[4]?.open).toBe(rows[3]?.open);
    expect(forcesOf(job)?.more).toContainEqual({
      label: 'at the open end',
      value: 'friction may hold it short of its stop',
    });
  });

  test('takes friction as left, before as found, before the sheet', () => {
    const fromOf = (step: string) =>
      forcesOf(jobAt(step, { place: 'bench' }).job)?.more.find(({ label }) => label === 'friction counted');
    expect(fromOf('asFoundVerdict')?.value).toContain('by the sheet');
    expect(fromOf('done')?.value).toContain('as left');
  });

  test('is drawn as bars that are as long as its forces, and read out with every one of them', () => {
    const { job } = jobAt('rigGauges', { place: 'bench' });
    const svg = forcesDrawn(job) ?? '';
    const widths = [...svg.matchAll(/<rect [^>]* width="([\d.]+)"/g)].map(([, width]) => Number(width));
    // Spring, process, friction and what is left, shut; spring, air, friction and what is left, open.
    expect(widths).toHaveLength(8);
    expect((widths[4] ?? 0) / (widths[0] ?? 1)).toBeCloseTo(5, 1);
    expect(widths[4]).toBeCloseTo(widths[5] ?? 0, 1);
    for (const { shut, open } of forcesOf(job)?.rows ?? [])
      for (const text of [shut, open]) expect(sentenceOf(svg)).toContain(text);
  });

  test('is not there without a spring, which has no bench set', () => {
    const { job } = jobAt('rigGauges', { place: 'bench' });
    expect(forcesOf({ ...job, sheet: aSheet({ springHeldBy: 'no spring' }) })).toBeNull();
  });
});
