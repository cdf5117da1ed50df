import type { Job } from '../../procedures/job.ts';
import type { HoldCard } from '../jobs/view/cards/hold-card.ts';

interface Row {
  readonly letter: string;
  readonly name: string;
  readonly done: string;
  readonly lock: string;
  readonly was: string;
  readonly is: string;
  readonly wide: string;
  readonly limit: string;
  readonly word: string;
}

/** A hold as it is read out by radio, one line after the other, in the order of its card. */
export function readOut(
  card: HoldCard,
  { job, leftOut }: { readonly job: Job; readonly leftOut: readonly string[] },
): readonly string[] {
  const rows = card.evidence.rows as readonly Row[];
  return [
    `Valve ${job.tag}, job ${job.id}. ${card.hold}: ${card.heading}.`,
    `Acceptable when: ${card.criterion}`,
    ...rows.map(evidenceLine),
    ...(card.evidence.absent === '' ? [] : [card.evidence.absent]),
    ...card.departures.map(({ text }) => `${text}.`),
    ...card.allows
      .filter(({ label }) => label === 'work' || label === 'air' || label === 'locks')
      .map(({ label, text, strong }) => `Allows, ${label}: ${text}${strong ? ` ${strong}` : ''}.`),
    ...(leftOut.length === 0 ? [] : [`By radio it does not allow: ${leftOut.join('; ')}.`]),
  ];
}

function evidenceLine({ letter, name, done, lock, was, is, wide, limit, word }: Row): string {
  const parts = [
    done,
    lock === '' ? '' : `lock ${lock}`,
    is === '' ? '' : `${was === '' ? '' : `was ${was}, `}reads ${is}`,
    wide,
    limit,
    done === '' && is === '' ? word.toLowerCase() : '',
  ].filter((part) => part !== '');
  return `${letter === '' ? '' : `${letter}, `}${name}: ${parts.join(', ')}.`;
}
