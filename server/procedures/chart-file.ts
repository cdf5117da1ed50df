import { type Definition, revisionOf } from '../../procedures/vocabulary.ts';
import { statechart } from '../../views/pictures/statechart.ts';
import { group, letters, shape } from '../../views/pictures/svg.ts';
import { chartsOf } from './chart-of.ts';
import { named } from './named.ts';

const MARGIN = 20;
const HEADING = 34;
/** What the page's style sheet says of these classes, for a file that stands by itself. */
const STYLE = [
  'text{font:14px sans-serif;fill:#14181a}',
  '.heading{font-size:20px;font-weight:700}',
  '.statechart__title,.statechart__number{font-weight:700}',
  '.ink-line{stroke:#14181a}.ink2-line{stroke:#454d51;fill:none}',
  '.ink-fill{fill:#14181a}.ink2-fill,.statechart__safe{fill:#454d51}',
  '.tint-fill{fill:#eef1ee}.sheet-ground,.ground{fill:#fff}text.sheet-fill{fill:#fff}',
].join('');

/**
 * The whole of a procedure as one picture that any browser opens: its phases below one another, each as a statechart.
 * @example chartFile(strokeCheck).startsWith('<svg xmlns=') // true
 */
export function chartFile(definition: Definition): string {
  const title = `${definition.title}, revision ${revisionOf(definition)}`;
  const drawn: string[] = [];
  let y = MARGIN + HEADING;
  let width = 0;
  for (const { title: phase, chart } of chartsOf(definition, named)) {
    const picture = statechart(chart);
    const [, w = '0', h = '0'] = /viewBox="0 0 (\S+) (\S+)"/.exec(picture) ?? [];
    drawn.push(letters({ x: MARGIN, y: y + 20, class: 'heading' }, phase));
    const placed = `<svg x="${MARGIN}" y="${y + HEADING}" width="${w}" height="${h}" `;
    drawn.push(picture.replace('<svg ', placed));
    y += HEADING + Number(h) + MARGIN;
    width = Math.max(width, Number(w));
  }
  const [wide, high] = [width + 2 * MARGIN, y + MARGIN];
  return group(
    {
      is: 'svg',
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${wide} ${high}`,
      width: wide,
      height: high,
      role: 'img',
      'aria-label': title,
    },
    [
      `<style>${STYLE}</style>`,
      shape('rect', { width: wide, height: high, class: 'ground' }),
      letters({ x: MARGIN, y: MARGIN + 14, class: 'heading' }, title),
      ...drawn,
    ],
  );
}
