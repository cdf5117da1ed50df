import { expect, test } from 'vitest';
import { wholeTags } from '../../views/whole-tags.ts';

const whole = (tag: string) => `<span class="whole">${tag}</span>`;

test('a tag of a valve, a point or a gauge stays on one line, wherever it stands in running text', () => {
  expect(wholeTags('<p>Shut HV-201A, then IA-201-1 of PV-1234.</p><li>G-07</li>')).toBe(
    `<p>Shut ${whole('HV-201A')}, then ${whole('IA-201-1')} of ${whole('PV-1234')}.</p><li>${whole('G-07')}</li>`,
  );
});

test('nothing else is touched: addresses, fields, choices, pictures, threads, negative numbers, and words with a hyphen', () => {
  const left =
    '<a href="/valves/FV-101" title="FV-101 > all">valve</a><input value="FV-101"><textarea>FV-101 x</textarea>' +
    '<select><option value="FV-101">FV-101, feed</option></select><svg viewBox="0 0 1 1"><text>FV-101</text></svg>' +
    '<title>FV-101, job 1</title><button>Sign hold 1 on FV-101</button><!-- FV-101 --><p>1/2-20, 5/8-18, 3-15 psi, read-back, A-B, X-1234567890, a.FV-1</p>';
  expect(wholeTags(left)).toBe(left);
});
