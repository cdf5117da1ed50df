import nunjucks from 'nunjucks';
import { LANGUAGES, type Language } from './language/language.ts';
import { isProcedureSaid } from './language/said-procedures.ts';
import { inLanguage } from './language/speak.ts';
import { boltCircle } from './pictures/bolt-circle.ts';
import { chanceBar, weightStrokes } from './pictures/chance-bar.ts';
import { energyTag } from './pictures/energy-tag.ts';
import { gauge } from './pictures/gauge.ts';
import { jobScale, waitScale } from './pictures/job-scale.ts';
import { alertTriangle, energyMark, stateWord, verdictMark } from './pictures/marks.ts';
import { plot } from './pictures/plot.ts';
import { statechart } from './pictures/statechart.ts';
import { strokeCurve } from './pictures/stroke-curve.ts';
import { valveSection } from './pictures/valve-section.ts';
import { SCREEN_CHOICES } from './screen-choice.ts';
import { TEMPLATES } from './templates.ts';
import { wholeTags } from './whole-tags.ts';

export interface RendererOptions {
  /** The folder that holds `layout.njk`, `pages/` and `components/`. */
  readonly folder: string;
  /** Address of a file of the style sheet's folder; a server may add the file's digest. */
  readonly asset?: (path: string) => string;
}

export interface Renderer {
  /** The page or the piece of a page, as text. Throws where the template names a value that is missing. */
  render(template: string, params: object, language?: Language): string;
  /** The text of a file beside the templates, for example a component's examples. */
  source(path: string): string;
}

/** Templates as the build made them; one names another beside it as `./it.njk`. */
class BuiltTemplates extends nunjucks.PrecompiledLoader {
  constructor(templates: Readonly<Record<string, object>>) {
    // Its types call for a list; what it takes is a table by path.
    super(templates as unknown as object[]);
  }

  override resolve(from: string, to: string): string {
    const parts = from.split('/').slice(0, -1);
    for (const part of to.split('/')) {
      if (part === '..') parts.pop();
      else if (part !== '.') parts.push(part);
    }
    return parts.join('/');
  }
}

/** As templates are read, here and in the build. */
export const TEMPLATE_OPTIONS: nunjucks.ConfigureOptions = {
  autoescape: true,
  throwOnUndefined: true,
  trimBlocks: true,
  lstripBlocks: true,
};

/** Our own drawing functions: templates call `draw.energyMark(...)`. Their text is SVG already and not escaped again. */
const DRAWINGS = {
  alertTriangle,
  boltCircle,
  chanceBar,
  energyMark,
  energyTag,
  gauge,
  jobScale,
  plot,
  statechart,
  strokeCurve,
  valveSection,
  verdictMark,
  waitScale,
  weightStrokes,
};

const WORDS = {
  stateWord,
  screenChoices: Object.entries(SCREEN_CHOICES).map(([name, choice]) => ({ name, ...choice })),
  groupStart,
  isProcedureSaid,
  languages: Object.entries(LANGUAGES).map(([name, { text }]) => ({ name, text })),
};

/** Does the column at this place begin one of the groups of a table? */
function groupStart(groups: readonly { columns: readonly string[] }[], column: number): boolean {
  let start = 0;
  for (const group of groups) {
    if (start === column) return true;
    start += group.columns.length;
  }
  return false;
}

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Words of people and of the plant stay as they wrote them; what stands behind is ours. @example {{ note | own }} */
function ownWords(text: string, more: string): string {
  const escaped = (one: string) => one.replaceAll(/[&<>"']/g, (letter) => ESCAPES[letter] ?? letter);
  return text === '' ? escaped(more) : `<span translate="no">${escaped(text)}</span>${escaped(more)}`;
}

/** What is read beside the valve, on a narrow screen: a job's page and the pieces of it. */
const OF_A_JOB = /^(pages\/job|parts\/(job-piece|replied|opened-line))\.njk$/;

/**
 * Templates to text. Everything is escaped unless it comes from one of our own drawing functions, and a
 * value that is missing is an error, because a blank cell on a job card reads as "nothing to report".
 * In a template, write `} }` where two braces would meet: the engine takes `}}` for the end of the expression.
 *
 * @example
 * const { render } = createRenderer({ folder: 'views' });
 * render('components/button/example.njk', { text: 'Count it' });
 */
export function createRenderer({ folder, asset }: RendererOptions): Renderer {
  const files = new nunjucks.FileSystemLoader(folder);
  const environment = new nunjucks.Environment(
    TEMPLATES === null ? files : new BuiltTemplates(TEMPLATES),
    TEMPLATE_OPTIONS,
  );
  const safe = environment.getFilter('safe');
  environment.addFilter('own', (text: unknown, more = '') => safe(ownWords(String(text), String(more))));
  const draw = Object.entries(DRAWINGS).map(([name, drawing]) => [
    name,
    (model: unknown) => safe((drawing as (model: unknown) => string)(model)),
  ]);
  environment.addGlobal('draw', Object.fromEntries(draw));
  for (const [name, value] of Object.entries(WORDS)) environment.addGlobal(name, value);
  environment.addGlobal('asset', asset ?? ((path: string) => `/assets/${path}`));
  return {
    render: (template, params, language = 'en') => {
      const said = inLanguage(environment.render(template, params), language);
      return OF_A_JOB.test(template) ? wholeTags(said) : said;
    },
    source: (path) => files.getSource(path).src,
  };
}
