import { describe, expect, test } from 'vitest';
import { jobScale, labelsThatFit, type ScaleTick } from '../../../views/pictures/job-scale.ts';

/** A hold just before a phase whose Spanish name is twice as long, and a phase soon after it. */
const TICKS: readonly ScaleTick[] = Array.from({ length: 52 }, (_, at): ScaleTick => {
  const state = at < 23 ? 'done' : at === 23 ? 'current' : 'next';
  if (at === 22) return { state, hold: 'H1' };
  if (at === 23) return { state, phase: 'As found' };
  if (at === 29) return { state, phase: 'Set the plug' };
  return at === 43 ? { state, phase: 'Return to service' } : { state };
});
const named = (lang: 'en' | 'es') => labelsThatFit(TICKS, { widthPx: 840, lang }).map(({ text }) => text);

describe('The names on a job scale', () => {
  test('leave out what would run into the phase that is open', () => {
    expect(named('en')).toEqual(['As found', 'Set the plug', 'Return to service']);
  });

  test('keep the room that their words need in the language of the page', () => {
    expect(named('es')).not.toContain('Set the plug');
    expect(named('es')).toContain('As found');
  });

  test('end at their tick on a phone, where they would else run out of it', () => {
    const svg = jobScale({
      ticks: TICKS.map((tick, at) => ({ ...tick, state: at < 43 ? 'done' : 'current' })),
    });
    expect(svg).toMatch(/scale-label--late[^>]*>Return to service/);
    expect(svg).not.toMatch(/scale-label--late[^>]*>As found/);
  });
});
