import type { Requirement } from './requirement.ts';

/** What law and practice ask before hands go in. */
export const ENERGY_ISOLATION: readonly Requirement[] = [
  {
    id: 'EI-24',
    text: 'A line shut off by one valve that nobody has tried shall be refused without a named risk assessment.',
    source: 'HSE HSG253, 2nd ed. 2006, categories of isolation, as summarised',
  },
  {
    id: 'EI-25',
    text: 'A poisonous fluid shall be shut off by positive isolation, unless a named assessment says why not.',
    source: 'HSE HSG253, 2nd ed. 2006, paragraphs 95 to 98, as summarised',
  },
  {
    id: 'EI-26',
    text: 'One block and a bleed shall be flagged for every fluid that can hurt.',
    source: 'HSE HSG253, 2nd ed. 2006, paragraph 120, as summarised',
  },
  {
    id: 'EI-30',
    text: 'The valve that is worked on shall never be named as its own isolation.',
    source: 'common practice, no source',
  },
];
