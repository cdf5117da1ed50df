import type { Renderer } from './render.ts';

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
  'findings',
  'folded-line',
  'hidden',
  'hold-card',
  'job-foot',
  'job-scale',
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
  'title-block',
  'understood',
  'verdict-mark',
] as const;

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
