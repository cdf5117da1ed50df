import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  LOOP_LETTERS_MAX,
  readLoopCsv,
} from '../../../../procedures/troubleshooting/loop-record/read-csv.ts';
import { dayOrderOf, readTimeS } from '../../../../procedures/troubleshooting/loop-record/time-cell.ts';

const rows = (count: number, of: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => of(at)).join('\r\n');
const table = (head: string, of: (at: number) => string, count = 30): string =>
  `${head}\r\n${rows(count, of)}\r\n`;
const faultsOf = (text: string) => readLoopCsv(text).faults;

describe('a record of the loop', () => {
  test('is read with commas and points, semicolons or tabs and decimal commas, all to the same', () => {
    const points = table('time,output,process', (at) => `${at},${50 + at / 10},${20.5}`);
    const commas = table('Time [s];OP;PV', (at) => `${at};${String(50 + at / 10).replace('.', ',')};20,5`);
    const tabs = commas.replaceAll(';', '\t');
    const quoted = table(
      'time,output,process',
      (at) => `${at},"${String(50 + at / 10).replace('.', ',')}","20,5"`,
    );
    const wanted = readLoopCsv(points).samples;
    expect(wanted).toHaveLength(30);
    expect(wanted[3]).toEqual({
      timeS: 3,
      outputPercent: 50.3,
      process: 20.5,
      positionPercent: null,
      setPoint: null,
    });
    for (const text of [commas, tabs, `\ufeffsep=;\n${commas}`, quoted])
      expect(readLoopCsv(text)).toEqual({ samples: wanted, faults: [] });
  });

  test('takes position and set point where they are there, and leaves other columns aside', () => {
    const text = table(
      'time [min],remark,output,process,position,set point',
      (at) => `${at},x,50,20,49.5,21`,
    );
    expect(readLoopCsv(text).samples[2]).toEqual({
      timeS: 120,
      outputPercent: 50,
      process: 20,
      positionPercent: 49.5,
      setPoint: 21,
    });
    const blank = table('time,output,process,position', (at) => `${at},50,20,`);
    expect(readLoopCsv(blank).samples[0]?.positionPercent).toBeNull();
  });

  test('counts time from its first row, as seconds, a clock, or date and clock', () => {
    const clock = table(
      'time,output,process',
      (at) => `2026-11-26 09:40:${String(at).padStart(2, '0')},50,20`,
    );
    expect(readLoopCsv(clock).samples.at(-1)?.timeS).toBe(29);
    expect(readTimeS('09:40:30', null)).toBe(34_830);
    expect(readTimeS('2026-02-30T09:40:30Z', null)).toBeNull();
    expect(readTimeS('25:00', null)).toBeNull();
  });

  test.each([
    ['26/11/2026 09:40:{s}', 'the day first'],
    ['11/26/2026 9:40:{s} AM', 'the month first, a clock of twelve hours'],
    ['26.11.2026 09:40:{s}', 'dots'],
    ['03/04/2026 9:40:{s} p. m.', 'either, where all rows are of one date'],
    ['2026/11/26 09:40:{s}.0000000', 'slashes, parts of a second'],
  ])('takes times as a historian writes them: %s, %s', (form) => {
    const text = table(
      'Timestamp,OP,PV',
      (at) => `${form.replace('{s}', String(at).padStart(2, '0'))},50,20`,
    );
    expect(readLoopCsv(text).samples.at(-1)?.timeS).toBe(29);
  });

  test('goes on past midnight, and says where day and month of its dates cannot be told apart', () => {
    const clock = (at: number) =>
      `${at < 15 ? `23:59:${45 + at}` : `00:00:${String(at - 15).padStart(2, '0')}`}`;
    expect(
      readLoopCsv(table('time,output,process', (at) => `${clock(at)},50,20`)).samples.at(-1)?.timeS,
    ).toBe(29);
    const dates = (at: number, days: readonly [string, string]) =>
      `${days[at < 15 ? 0 : 1]}/2026 ${clock(at)},50,20`;
    const dated = (days: readonly [string, string]) => table('time,output,process', (at) => dates(at, days));
    for (const days of [
      ['03/04', '04/04'],
      ['04/03', '04/04'],
      ['31/12', '01/01'],
    ] as const)
      expect(readLoopCsv(dated(days).replaceAll('01/01/2026', '01/01/2027')).samples.at(-1)?.timeS).toBe(29);
    expect(faultsOf(dated(['03/04', '05/06']))).toEqual([
      {
        row: null,
        column: null,
        what: 'Day and month of its dates cannot be told apart. Write the year first.',
      },
    ]);
    expect(dayOrderOf(['13/04/2026 10:00', '04/14/2026 10:00'])).toBeNull();
    expect(dayOrderOf(['11/30/2026 10:00', '12/01/2026 10:00'])).toBe('month first');
    expect(readTimeS('12:05 AM', null)).toBe(300);
    expect(readTimeS('13:05 PM', null)).toBeNull();
  });

  test('is read with a head in Spanish, or one that names its columns by tags', () => {
    const row = (at: number) => `${at};50,1;20,4;49;21`;
    const wanted = readLoopCsv(table('time;output;process;position;set point', row));
    expect(wanted.samples).toHaveLength(30);
    for (const head of [
      'Tiempo [s];Salida;Medición;Posición;Consigna',
      'Hora;Salida del controlador;Variable de proceso;Carrera;Punto de ajuste',
      'Timestamp;FIC-101.OP;FIC-101.PV;ZT-101.Position;FIC-101.SP',
    ])
      expect(readLoopCsv(table(head, row))).toEqual(wanted);
  });

  test('with a wrong cell is taken as a whole or not at all, each wrong cell named by row and column', () => {
    const text = table('time,output,process', (at) =>
      at === 4
        ? '4,abc,20'
        : at === 7
          ? '7,50,'
          : at === 9
            ? '2,50,20'
            : at === 11
              ? '11,140,20'
              : `${at},50,20`,
    );
    expect(readLoopCsv(text).samples).toEqual([]);
    expect(faultsOf(text)).toEqual([
      { row: 6, column: 'output', what: '“abc” is no number.' },
      { row: 9, column: 'process', what: 'Nothing is written.' },
      { row: 11, column: 'time', what: 'It does not come after the row before.' },
      { row: 13, column: 'output', what: '140 is beyond -10 to 110 %.' },
    ]);
  });

  test('without its columns, too short, too long or cut off says so', () => {
    expect(faultsOf('')[0]?.what).toContain('names no column for time, output, process');
    expect(faultsOf(table('time,process', () => '1,2'))[0]?.what).toContain('names no column for output');
    expect(faultsOf(table('time,output,process,pv', (at) => `${at},1,2,3`))[0]?.what).toContain('twice');
    expect(faultsOf(table('time,output,process', (at) => `${at},1,2`, 5))[0]?.what).toContain('at least 20');
    expect(faultsOf(table('time,output,process', (at) => `${at},1,2`, 5001))[0]?.what).toContain(
      'at most 5000',
    );
    expect(faultsOf('x'.repeat(LOOP_LETTERS_MAX + 1))[0]?.what).toContain('letters');
    expect(faultsOf('x'.repeat(20 * LOOP_LETTERS_MAX))[0]?.what).toContain('Take one row of 20');
    expect(faultsOf('time,output,process\n1,"2,3\n')[0]?.what).toContain('quotation mark');
    expect(faultsOf(`time,output,process\n${'9'.repeat(3000)}`)[0]?.what).toContain('longer than');
  });

  test('of any text never crashes it, and gives rows or faults, never both', () => {
    const cell = fc.oneof(fc.double().map(String), fc.string({ maxLength: 6 }), fc.constant(''));
    const lines = fc.array(
      fc.array(cell, { maxLength: 6 }).map((cells) => cells.join(';')),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(fc.constantFrom('time;output;process', 'time,output,process', ''), lines, (head, body) => {
        const { samples, faults } = readLoopCsv([head, ...body].join('\n'));
        expect(samples.length === 0).toBe(faults.length > 0);
        for (const one of samples)
          expect(Number.isFinite(one.timeS + one.outputPercent + one.process)).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
