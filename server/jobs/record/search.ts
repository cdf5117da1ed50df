/** What a search for a fault came to, for the first sheet of its record. */
import type { Job } from '../../../procedures/job.ts';
import { CAUSE_IDS, causeOf } from '../../../procedures/troubleshooting/causes.ts';
import { checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { mendsIn } from '../../../procedures/troubleshooting/job/evidence-of-job.ts';
import { OPENING_IDS, OPENINGS } from '../../../procedures/troubleshooting/openings.ts';
import { REPAIR_IDS, repairOf } from '../../../procedures/troubleshooting/repairs.ts';
import type { JobRecord } from './schema.ts';

/** Empty where the job looked for no fault. */
export function searchOf({ answers, procedure }: Pick<Job, 'answers' | 'procedure'>): JobRecord['search'] {
  if (procedure !== 'find-the-fault') return [];
  const standing = answers.filter(({ superseded }) => !superseded);
  const checks = standing.filter(({ figures }) => figures.evidence === 'check').length;
  const named = standing.findLast(({ step }) => step.startsWith('nameCause'));
  const repair = REPAIR_IDS.find((id) => id === named?.figures.repair);
  const cause = CAUSE_IDS.find((id) => id === named?.figures.cause);
  const rows = [
    ['complained of', complaintOf({ answers })],
    ['checks made', checks === 0 ? '' : String(checks)],
    ...mendsIn(answers).map((mend) => ['mended on the spot', mendWords(mend)] as const),
    ['likeliest cause when it was named', cause === undefined ? '' : causeOf(cause).words],
    ['repair named', repair === undefined ? '' : repairOf(repair).words],
  ] as const;
  return [
    ...rows.flatMap(([label, value]) => (value === '' ? [] : [{ label, value, isOwn: false }])),
    ...ownWords(named?.words.causeSeen ?? ''),
  ];
}

/** What the operator said as a search began, in the words of its card; blank where numbers alone were told. */
export function complaintOf({ answers }: Pick<Job, 'answers'>): string {
  const told = answers.findLast(({ step, superseded }) => step === 'complaint' && !superseded)?.words.symptom;
  const symptom = OPENING_IDS.find((id) => id === told);
  return symptom === undefined ? '' : OPENINGS[symptom].words;
}

function ownWords(seen: string): JobRecord['search'] {
  return seen === '' ? [] : [{ label: 'what was found, in their words', value: seen, isOwn: true }];
}

function mendWords({ repair, proof }: ReturnType<typeof mendsIn>[number]): string {
  const { words } = repairOf(repair);
  if (proof === null) return `${words}; not proved on this job`;
  const { title } = checkOf(proof.check);
  return proof.sound ? `${words}; ${title}: sound` : `${words}; ${title}: not sound`;
}
