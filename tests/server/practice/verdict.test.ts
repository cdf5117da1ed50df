import { expect, test } from 'vitest';
import type { Job } from '../../../procedures/job.ts';
import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import type { RepairId } from '../../../procedures/troubleshooting/repairs.ts';
import { verdictOf } from '../../../server/practice/verdict.ts';

function job(mended: readonly RepairId[], named: RepairId | null): Pick<Job, 'answers'> {
  const lines = [
    ...mended.map((repair) => ({ step: 'mendOnBypass', figures: { evidence: 'mended', repair } })),
    ...(named === null ? [] : [{ step: 'nameCauseInService', figures: { repair: named } }]),
  ];
  return { answers: lines.map((line) => ({ ...line, superseded: false })) as unknown as Job['answers'] };
}

test.each<[readonly CauseId[], readonly RepairId[], RepairId | null, boolean, string]>([
  [['restrictionTop'], ['pressPlunger'], 'leaveAlone', true, 'What you mended put it right.'],
  [['caseJoint'], [], 'tightenCase', true, 'What you named puts it right.'],
  [['caseJoint'], [], 'repack', false, 'What you named does not put it right.'],
  [['caseJoint'], ['clearVent'], null, false, 'Nothing was named.'],
  [['caseJoint', 'packingTight'], [], 'repack', true, 'What you named puts one of the two right.'],
  [
    ['caseJoint', 'springVentPlugged'],
    ['clearVent'],
    'repack',
    true,
    'What you mended put one of the two right.',
  ],
  [
    ['caseJoint', 'springVentPlugged'],
    ['clearVent'],
    'tightenCase',
    true,
    'What you mended and what you named put it right.',
  ],
  [['nothingWrong'], [], 'leaveAlone', true, 'It was sound, and you left it alone.'],
  [['nothingWrong'], [], 'repack', false, 'It was sound: what you named would have been in vain.'],
])('a valve with %j, mended %j and named %j: %s, “%s”', (truth, mended, named, rightly, verdict) => {
  expect(verdictOf(job(mended, named), truth)).toEqual({ rightly, verdict });
});
