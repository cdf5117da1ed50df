import { auditKind } from './audit/review-stream.ts';
import { gearKind } from './gear/gear-stream.ts';
import { jobAuditor } from './jobs/auditor.ts';
import { procedureKind } from './jobs/catalogue.ts';
import { jobKind } from './jobs/job-stream.ts';
import { pointKind } from './jobs/point-stream.ts';
import type { Auditor } from './log/auditor.ts';
import type { StreamKind } from './log/stream-kind.ts';
import { personKind } from './people/person-stream.ts';
import { planKind } from './plans/plan-stream.ts';
import { absenceKind } from './points/absence-stream.ts';
import { crewKind } from './points/crew-stream.ts';
import { signingKind } from './signing/signing-stream.ts';
import { siteKind } from './site-stream.ts';
import { valveKind } from './valves/valve-stream.ts';

/** Every kind of stream that the log knows. A part adds its own here, and nowhere else. */
export const streamKinds: readonly StreamKind<unknown>[] = [
  siteKind,
  personKind,
  valveKind,
  gearKind,
  planKind,
  jobKind,
  pointKind,
  crewKind,
  absenceKind,
  procedureKind,
  signingKind,
  auditKind,
];

/** What more than the chain must hold of a stream, checked by `npm run verify`. */
export const auditors: readonly Auditor[] = [jobAuditor];
