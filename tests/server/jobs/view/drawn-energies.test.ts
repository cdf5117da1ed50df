import { expect, test } from 'vitest';
import { drawing } from '../../../../server/jobs/view/drawing.ts';
import { jobOn } from '../../../builders/answers.ts';
import { repairNamed } from '../../../builders/own-air-valve.ts';
import { aSheet } from '../../../builders/sheets.ts';

const ended = { actuatorKind: 'piston', springHeldBy: 'no spring', failPosition: 'stays' } as const;

test('a cylinder without a spring has no tag that says its spring is loaded', () => {
  const tagsOf = (sheet: ReturnType<typeof aSheet>) => {
    const { job } = jobOn(repairNamed('piston-seals'), { sheet });
    return drawing(job, { nowMs: 0 }).svg;
  };
  expect(tagsOf(aSheet({ ...ended, springHeldBy: 'case', failPosition: 'shut' }))).toContain('LOADED');
  const without = tagsOf(aSheet(ended));
  expect(without).not.toContain('LOADED');
  expect(without).toContain('LIVE');
});

test('what drives the actuator is drawn as the positioner where one is fitted, and as the converter where none is', () => {
  const drawn = (positioner: 'none' | 'pneumatic') => {
    const { job } = jobOn(repairNamed('tubing'), { sheet: aSheet({ positioner }) });
    return drawing(job, { nowMs: 0 }).svg;
  };
  expect(drawn('pneumatic')).toContain('>POS<');
  expect(drawn('pneumatic')).not.toContain('>I/P<');
  expect(drawn('none')).toContain('>I/P<');
});
