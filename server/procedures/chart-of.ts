import { numbered } from '../../procedures/sheet-print.ts';
import type { Definition, OpenStep, Target } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';
import type { Chart, ChartBox, ChartWay } from '../../views/pictures/statechart.ts';
import { WAY_WORDS } from './way-words.ts';

export interface PhaseChart {
  readonly title: string;
  readonly chart: Chart;
}

/** A definition phase by phase, as boxes with their ways; making safe stands in the text of each box, not as a line. */
export function chartsOf(definition: Definition, named: (text: string) => string): readonly PhaseChart[] {
  const numbers = numbered(definition);
  return definition.phases.flatMap((phase) => {
    const boxes = [...numbers].flatMap(([id, number]): ChartBox[] => {
      const step = definition.steps[id];
      if (step === undefined || step.phase !== phase.id) return [];
      if (step.kind === 'end')
        return [{ number, title: named(step.title), kind: 'end', ways: [], makeSafe: null }];
      return [
        {
          number,
          title: named(step.title),
          kind: step.kind === 'hold' ? 'hold' : 'step',
          ways: waysIn(step, numbers),
          makeSafe: numbers.get(step.makeSafe) ?? null,
        },
      ];
    });
    const sentence = `${phase.title}: ${boxes.length} steps and the ways between them; the same stands in words below.`;
    return boxes.length === 0 ? [] : [{ title: phase.title, chart: { boxes, sentence } }];
  });
}

function waysIn(step: OpenStep, numbers: ReadonlyMap<string, number>): readonly ChartWay[] {
  return waysOf(step).flatMap(({ event, outcome, way }) => {
    if (event === 'STOP') return [];
    const label = step.kind === 'question' ? step.choices[outcome ?? '']?.label : outcome;
    return targets(way.to).map(({ to, where }) => ({
      label: `${label ?? WAY_WORDS[event]}${where}`,
      to: numbers.get(to) ?? 0,
    }));
  });
}

function targets(to: Target<string>): readonly { readonly to: string; readonly where: string }[] {
  if (typeof to === 'string') return [{ to, where: '' }];
  return Object.entries(to.ways).map(([is, step]) => ({ to: step, where: `, ${to.by} ${is}` }));
}
