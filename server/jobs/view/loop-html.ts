import type { LoopView } from './loop-record.ts';

/** What stands behind the line of a loop record: its pictures, what they rest on, and the same in numbers. */
export function loopHtml(
  { said, rows, table, trend, orbit }: LoopView,
  escaped: (text: string) => string,
): string {
  const figures = rows.map(
    ({ label, value }) => `<div><dt>${escaped(label)}</dt><dd>${escaped(value)}</dd></div>`,
  );
  const heads = table.heads.map((head) => `<th scope="col" class="number">${escaped(head)}</th>`);
  const body = table.rows.map(
    (cells) => `<tr>${cells.map((text) => `<td class="number">${escaped(text)}</td>`).join('')}</tr>`,
  );
  return [
    `<p><b>${escaped(said)}</b></p>`,
    `<div class="loop"><div>${trend}</div><div>${orbit}</div></div>`,
    `<dl class="ruled">${figures.join('')}</dl>`,
    '<details><summary>The same in numbers, some rows of it</summary>',
    '<div class="scroll" tabindex="0" role="region" aria-label="Rows of the record of the loop">',
    `<table class="table"><thead><tr>${heads.join('')}</tr></thead><tbody>${body.join('')}</tbody></table></div></details>`,
  ].join('');
}
