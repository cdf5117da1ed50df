import { describe, expect, test } from 'vitest';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import { openSteps } from '../builders/mutants.ts';

describe('The sheet of the stroke check', () => {
  const sheet = printSheet(strokeCheck);

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
      '- The signature allows: connect test air to the actuator, stroke the valve by test air',
    );
  });

  test('names its quantities and holds no markup of pages', () => {
    expect(sheet).toContain('{benchSetMid}');
    expect(sheet).not.toMatch(/<\/?[a-z]/i);
  });
});
