import { calculationOf } from '../../../procedures/calculations/registry.ts';
import { pathOfCalculation } from '../../calculations/view.ts';
import type { JobView } from './job-view.ts';
import type { WorkingView } from './line-working.ts';
import { loopHtml } from './loop-html.ts';

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const WHY = 'Why this number';

type Line = JobView['lines'][number]['lines'][number];

/** Which job a line is of, and at which valve. */
interface Where {
  readonly job: string;
  readonly tag: string;
}

/** What stands behind a folded line: the rest of what was given, why its number is so, and the way to correct it. */
export function lineHtml(line: Line, { job, tag }: Where): string {
  const link = (place: number) => ` <a href="/jobs/${job}/lines/${place}">Correct line ${place}</a>`;
  if (line.rows.length > 1) {
    const rows = line.rows.map(
      (row) =>
        `<li>${escaped(row.reading)}${row.word === '' ? '' : `, ${row.word}`}.${row.correctable ? link(row.place) : ''}</li>`,
    );
    return `<ol>${rows.join('')}</ol>`;
  }
  const again = line.readable
    ? ` <a href="/jobs/${job}/lines/${line.place}/again">Read line ${line.place} again</a>`
    : '';
  const photo =
    line.photo === undefined || line.photo === null
      ? ''
      : `<img class="photo" src="/jobs/${job}/photos/${line.place}" width="${line.photo.widthPx}" height="${line.photo.heightPx}" loading="lazy" decoding="async" alt="${escaped(line.what)}">`;
  const loop = line.loop === undefined || line.loop === null ? '' : loopHtml(line.loop, escaped);
  const working = line.working?.() ?? null;
  const why = working === null ? '' : workingHtml(working, tag);
  const strike =
    line.isNote === true && line.verdict.word !== 'struck'
      ? ` <a href="/jobs/${job}/notes#note-${line.place}">Strike line ${line.place}</a>`
      : '';
  return `${photo}${gaveHtml(line.gave)}<p>${escaped(line.more)}.${strike}${line.correctable ? link(line.place) : ''}${again}</p>${why}${loop}`;
}

function gaveHtml(gave: Line['gave']): string {
  const rows = gave.map(
    ({ label, value, isOwn }) =>
      `<div><dt>${escaped(label)}</dt><dd${isOwn ? ' translate="no"' : ''}>${escaped(value)}</dd></div>`,
  );
  return rows.length === 0 ? '' : `<dl class="ruled ruled--even">${rows.join('')}</dl>`;
}

function workingHtml({ rows, how, calculation }: WorkingView, tag: string): string {
  const figures = rows.map(
    ({ label, value }) => `<div><dt>${escaped(label)}</dt><dd>${escaped(value)}</dd></div>`,
  );
  return [
    `<p><b>${WHY}</b></p>`,
    `<dl class="ruled ruled--even">${figures.join('')}</dl>`,
    ...how.map((text) => `<p>${escaped(text)}</p>`),
    calculation === '' ? '' : linkTo(calculation, tag),
  ].join('');
}

function linkTo(calculation: string, tag: string): string {
  const address = `${pathOfCalculation(calculation)}?${new URLSearchParams({ valve: tag })}`;
  return `<p><a href="${escaped(address)}">Work it out: ${escaped(calculationOf(calculation).title)}</a></p>`;
}

function escaped(text: string): string {
  return text.replaceAll(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign);
}
