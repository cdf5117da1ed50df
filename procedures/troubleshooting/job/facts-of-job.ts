import type { Job } from '../../job.ts';
import { type GaugePoint, type ValveFacts, valveFactsOf } from '../valve-facts.ts';

/** Fields of the card "What is fitted", with the gauge points that a yes or a no speaks of. */
export const GAUGE_FIELDS: Readonly<Record<string, readonly GaugePoint[]>> = {
  gaugeAtSource: ['source'],
  gaugeAtSignal: ['signal'],
  gaugeAtSupply: ['supply'],
  gaugeAtCase: ['actuator'],
  gaugeAtEnds: ['cylinderTop', 'cylinderBottom'],
  gaugeAtNozzle: ['nozzle', 'nozzleTop', 'nozzleBottom'],
};

/** The facts that cause and check are worked out from: the sheet, and what was seen at the valve. */
export function factsOfJob({ sheet, words }: Pick<Job, 'sheet' | 'words'>): ValveFacts {
  const source = words.sourceKind;
  const named = source === 'transducer' || source === 'pneumatic controller';
  const bare = valveFactsOf(sheet, named ? { source } : {});
  return { ...bare, gaugesFitted: gaugesOf(words, bare.gaugesFitted) };
}

function gaugesOf(words: Job['words'], usual: readonly GaugePoint[]): readonly GaugePoint[] {
  const said = Object.entries(GAUGE_FIELDS);
  const [yes, no] = (['yes', 'no'] as const).map((word) =>
    said.filter(([field]) => words[field] === word).flatMap(([, points]) => points),
  );
  return [...new Set([...usual, ...(yes ?? [])])].filter((point) => no?.includes(point) !== true);
}
