import { expect, test } from 'vitest';
import { wholeTags } from '../../views/whole-tags.ts';

const whole = (tag: string) => `<span class="whole">${tag}</span>`;

test('a tag of a valve, a point or a gauge stays on one line, wherever it stands in running text', () => {
  expect(wholeTags('<p>Shut HV-201A, <br>then IA-201-1 of PV-1234.</p><ol><li>G-07</li></ol>')).toBe(
    `<p>Shut ${whole('HV-201A')}, <br>then ${whole('IA-201-1')} of ${whole('PV-1234')}.</p><ol><li>${whole('G-07')}</li></ol>`,
  );
  expect(
    wholeTags('<a><b class="x line__what">Look at LV-201</b><i>LV-202</i></a><h2><b>a</b> LV-203</h2>'),
  ).toBe(
    `<a><b class="x line__what">Look at ${whole('LV-201')}</b><i>LV-202</i></a><h2><b>a</b> ${whole('LV-203')}</h2>`,
  );
});

test('nothing else is touched: addresses, fields, choices, keys, pictures, threads, and words with a hyphen', () => {
  const left =
    '<p><a href="/valves/FV-101" title="FV-101 > all">valve</a><input value="FV-101"><textarea>FV-101 x</textarea>' +
    '<select><option value="FV-101">FV-101, feed</option></select><svg viewBox="0 0 1 1"><text>FV-101</text></svg></p>' +
    '<title>FV-101, job 1</title><button>Sign hold 1 on FV-101</button><label>Tag of FV-101 <small>as it is</small></label>' +
    '<!-- FV-101 --><p>1/2-20, 5/8-18, 3-15 psi, read-back, A-B, X-1234567890, a.FV-1</p>';
  expect(wholeTags(left)).toBe(left);
});
