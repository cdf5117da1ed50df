import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { asJson, type Definition, revisionOf } from '../../procedures/vocabulary.ts';
import { canonical } from '../../server/log/canonical.ts';
import { openSteps, withStep } from '../builders/mutants.ts';
import { ROOT } from '../root.ts';

const stored = (name: string) => readFileSync(join(ROOT, 'procedures', 'commissioning', name), 'utf8');
const hashOf = (definition: Definition) =>
  createHash('sha256')
    .update(canonical(asJson(definition)), 'utf8')
    .digest('hex');
const revisions = JSON.parse(stored('stroke-check.revisions.json')) as Readonly<Record<string, string>>;

describe('The sheet of the stroke check', () => {
  const sheet = printSheet(strokeCheck);

  test('is the one that was reviewed; `npm run sheets` prints it anew', () => {
    expect(sheet).toBe(stored('stroke-check.sheet.md'));
  });

  test('numbers every step once and leads every way to a number', () => {
    const numbers = [...sheet.matchAll(/^### (\d+)\. /gm)].map((match) => Number(match[1]));
    expect(numbers).toEqual(Object.keys(strokeCheck.steps).map((_, index) => index + 1));
    const led = [...sheet.matchAll(/then step (\d+)/g)].map((match) => Number(match[1]));
    expect(Math.max(...led)).toBeLessThanOrEqual(numbers.length);
    expect(sheet).not.toMatch(/undefined|\[object|NaN/);
    for (const [id, step] of openSteps(strokeCheck)) {
      expect(sheet).toContain(`\`${id}\``);
      expect(sheet).toContain(step.title);
    }
  });

  test('prints the caution before the action and its lines, and what the action wants', () => {
    const card = sheet.slice(
      sheet.indexOf('Turn the plug stem {turnsWanted}'),
      sheet.indexOf('Find the contact again'),
    );
    const order = [
      '**WARNING:**',
      '- Action: turn the plug stem',
      '- Only with:',
      '- Do: Loosen',
      '- Asks: Turns made',
      '- Make safe and stop:',
    ];
    const at = order.map((line) => card.indexOf(line));
    expect(at).not.toContain(-1);
    expect(at).toEqual([...at].sort((one, other) => one - other));
    expect(card).toContain('Signal or test air held');
  });

  test('says of each hold what its signer is shown and what the signature allows', () => {
    expect(sheet).toContain(
      '- The signer is shown: Supply air, Second air feed, Signal or test air, Spring, Process, inlet side',
    );
    expect(sheet).toContain(
      '- The signature allows: connect test air to the case, stroke the valve by test air',
    );
  });

  test('names its quantities and holds no markup of pages', () => {
    expect(sheet).toContain('{benchSetMid}');
    expect(sheet).not.toMatch(/<\/?[a-z]/i);
  });
});

describe('A revision of the stroke check', () => {
  test('is what was written down under its letter: a change needs a new one', () => {
    const letter = revisionOf(strokeCheck);
    expect(hashOf(strokeCheck)).toBe(revisions[letter]);
  });

  test('has its letter once, and every letter that was issued is still told', () => {
    const letters = strokeCheck.revisions.map((one) => one.letter);
    expect(new Set(letters).size).toBe(letters.length);
    expect(Object.keys(revisions)).toEqual(letters);
  });

  test('is another one for any change of any word', () => {
    const done = { ...strokeCheck.steps.done, title: 'The valve is back.' };
    expect(hashOf(withStep(strokeCheck, 'done', done))).not.toBe(hashOf(strokeCheck));
  });
});
