import fc from 'fast-check';
import { expect, test } from 'vitest';
import { understand } from '../../../procedures/readings/given.ts';
import { askOf } from '../../../procedures/reply/ask.ts';
import { type AtCard, atCard, atRow } from './at-card.ts';

const PSI_PA = 6894.757293168361;
/** Units as people write them, with their size; NIST SP 811. */
const PRESSURES = [
  ['psi', PSI_PA],
  ['PSIG', PSI_PA],
  ['bar', 1e5],
  ['kPa', 1e3],
  ['mbar', 100],
] as const;
const TIMES = [
  ['s', 1],
  ['sec', 1],
  ['min', 60],
] as const;
/** Of this valve's stroke of 0.75 in. */
const TRAVELS = [
  ['%', 0.75 * 0.000254],
  ['percent', 0.75 * 0.000254],
  ['mm', 1e-3],
  ['in', 0.0254],
  ['"', 0.0254],
] as const;

interface Written {
  readonly text: string;
  readonly si: number;
}

/** A value between two in SI, in any of the units, with point or comma, with or without a space. */
function written(
  units: readonly (readonly [string, number])[],
  { lowSi, highSi }: { readonly lowSi: number; readonly highSi: number },
): fc.Arbitrary<Written> {
  return fc
    .record({
      unit: fc.constantFrom(...units),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      comma: fc.boolean(),
      space: fc.constantFrom('', ' '),
    })
    .map(({ unit: [name, size], share, comma, space }) => {
      const digits = String(Number(((lowSi + share * (highSi - lowSi)) / size).toPrecision(4)));
      // `1,234` may be a thousand: what is asked back has its own test.
      const shown = comma && !/^[1-9]\d{0,2}\.\d{3}$/.test(digits) ? digits.replace('.', ',') : digits;
      return { text: `${shown}${space}${name}`, si: Number(digits) * size };
    });
}

const between = fc.constantFrom(' ', ', ', '; ', ' @ ', ' at ', ' / ', ' and ', '\t', '  ', ' -> ');
const joined = (parts: readonly string[], sign: string) => parts.join(sign);

function countedSi({ job, around, read }: AtCard, text: string): Readonly<Record<string, number>> {
  const reply = read(text);
  expect(reply, text).toMatchObject({ kind: 'understood', act: { act: 'answer' } });
  if (reply.kind !== 'understood' || reply.act.act !== 'answer') return {};
  const [given = {}] = reply.act.givens;
  const { readings } = understand(askOf(job, around).fields, { given, job, today: around.today });
  return Object.fromEntries(Object.values(readings).map(({ field, valueSi }) => [field, valueSi]));
}

test('any signal and any travel, in any unit and order, count as what was written', () => {
  const card = atRow(atCard('cycle'), 2);
  fc.assert(
    fc.property(
      written(PRESSURES, { lowSi: 8 * PSI_PA, highSi: 10 * PSI_PA }),
      written(TRAVELS, { lowSi: 0.001, highSi: 0.018 }),
      fc.boolean(),
      between,
      (signal, travel, travelFirst, sign) => {
        const parts = travelFirst ? [travel.text, signal.text] : [signal.text, travel.text];
        const counted = countedSi(card, joined(parts, sign));
        expect(counted.signalPa).toBeCloseTo(signal.si, 3);
        expect(counted.travelM).toBeCloseTo(travel.si, 9);
      },
    ),
    { numRuns: 300 },
  );
});

test('two pressures keep their order wherever the time stands', () => {
  const card = atCard('watch');
  const onCase = { lowSi: 3 * PSI_PA, highSi: 15 * PSI_PA };
  fc.assert(
    fc.property(
      written(PRESSURES, onCase),
      written(PRESSURES, onCase),
      written(TIMES, { lowSi: 10, highSi: 600 }),
      fc.nat(2),
      between,
      (start, end, time, at, sign) => {
        const parts = [start.text, end.text];
        parts.splice(at, 0, time.text);
        const counted = countedSi(card, joined(parts, sign));
        expect(counted.startPa).toBeCloseTo(start.si, 3);
        expect(counted.endPa).toBeCloseTo(end.si, 3);
        expect(counted.watchedS).toBeCloseTo(time.si, 6);
      },
    ),
    { numRuns: 200 },
  );
});
