import { everyDrawing } from './pictures/drawings.ts';
import { CURVE_EXAMPLES, VALVE_EXAMPLES } from './pictures/examples.ts';
import type { Renderer } from './render.ts';
import type { screenChoice } from './screen-choice.ts';

/** Every component, by the name of its folder. */
export const COMPONENTS = [
  'button',
  'choice',
  'energy-mark',
  'energy-strip',
  'energy-tag',
  'evidence',
  'facts-grid',
  'field',
  'figure-field',
  'findings',
  'folded-line',
  'hidden',
  'hold-card',
  'job-foot',
  'job-scale',
  'likely-causes',
  'lines-head',
  'mark-key',
  'open-card',
  'phase-heading',
  'pin-keys',
  'reading-table',
  'record-block',
  'record-sheet',
  'refusal',
  'reply-line',
  'ruled-list',
  'ruled-table',
  'select',
  'sheet',
  'shift-row',
  'signal-panel',
  'signature',
  'table-field',
  'title-block',
  'understood',
  'verdict-mark',
] as const;

/** How wide a specimen stands on the style page: several in a row, as wide as a card, or as the page. */
const SMALL: readonly string[] = [
  'button',
  'choice',
  'energy-mark',
  'energy-tag',
  'field',
  'figure-field',
  'select',
  'verdict-mark',
];
const WIDE: readonly string[] = [
  'job-scale',
  'mark-key',
  'record-sheet',
  'ruled-table',
  'shift-row',
  'title-block',
];

export interface ComponentContract {
  readonly about: string;
  /** Each option and what it means. */
  readonly params: Readonly<Record<string, string>>;
  readonly examples: readonly { readonly name: string; readonly params: object }[];
}

/** The contract that stands beside a component's template: its options, and examples that tests draw too. */
export function componentExamples(renderer: Pick<Renderer, 'source'>, component: string): ComponentContract {
  return JSON.parse(renderer.source(`components/${component}/examples.json`)) as ComponentContract;
}

/** Name of a component's macro: `reply-line` is called as `replyLine`. */
export function macroName(component: string): string {
  return component.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
}

/**
 * Everything that the style page shows: each component with each of its examples, then the pictures.
 *
 * @example
 * renderer.render('pages/style.njk', styleView({ renderer, screen: screenChoice(undefined) }));
 */
export function styleView(of: { renderer: Renderer; screen: ReturnType<typeof screenChoice> }): object {
  return {
    page: { lang: 'en', title: 'Every part in every state', screen: of.screen },
    components: COMPONENTS.map((component) => ({
      component,
      macro: macroName(component),
      size: SMALL.includes(component) ? 'small' : WIDE.includes(component) ? 'wide' : 'card',
      ...componentExamples(of.renderer, component),
    })),
    valves: VALVE_EXAMPLES,
    curves: CURVE_EXAMPLES,
    drawings: everyDrawing(),
  };
}
