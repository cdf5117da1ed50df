import { ENERGY_ISOLATION } from './required/energy-isolation.ts';
import { FAULTS } from './required/faults.ts';
import { HOLD_POINTS } from './required/hold-points.ts';
import { INTERFACE } from './required/interface.ts';
import { RELIABILITY } from './required/reliability.ts';
import type { Requirement } from './required/requirement.ts';
import { SIGNATURES } from './required/signatures.ts';
import { WEB_SECURITY } from './required/web-security.ts';

/** What this folder asks of itself. What law, standards and good practice ask stands beside it, a file a subject. */
const OF_THIS_FOLDER: readonly Requirement[] = [
  {
    id: 'SAF-01',
    text: 'A pressure shall count as gone only where the reading and its uncertainty are at most the stated safe limit.',
    source: '29 CFR 1910.147(d)(6), verification of isolation; the limits are common practice, no source',
  },
  {
    id: 'SAF-02',
    text: 'A zero shall count only on a gauge that this job saw alive at that place, or where a vent was cracked without flow, twice.',
    source: '29 CFR 1910.147(d)(6), verification of isolation; twice is common practice, no source',
  },
  {
    id: 'SAF-03',
    text: 'An action shall be refused unless every energy and lock that its class names stands in an allowed state.',
    source: '29 CFR 1910.147(d)(1) to (d)(6), the order of control and verification before work',
  },
  {
    id: 'SAF-04',
    text: 'The interlock shall refuse from the log, the table and the isolation points alone, whatever state the machine is in.',
    source: 'common practice, no source: two ways to the same answer that share no code',
  },
  {
    id: 'SAF-05',
    text: 'A hold shall be signed by a supervisor who neither did nor acknowledged any of the work since the last hold.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'SAF-06',
    text: 'A sign-off shall allow the work that it names, up to the pressure and the hour that it names, and nothing else.',
    source: '10 CFR 50 appendix B, criterion X; the bounds are common practice, no source',
  },
  {
    id: 'SAF-07',
    text: 'An isolation point shall not be restored while any job relies on it.',
    source: '29 CFR 1910.147(e)(3), the device stays until the one who relies on it removes it',
  },
  {
    id: 'SAF-08',
    text: 'A test pressure shall never be above the lower of the case rating and the highest signal with its margin.',
    source: 'common practice, no source',
  },
  {
    id: 'SAF-09',
    text: 'Every step shall have a way to make safe that no guard and no hold can block.',
    source: 'common practice, no source',
  },
  {
    id: 'SAF-10',
    text: 'No procedure shall end with a lock on or a bypass open.',
    source: '29 CFR 1910.147(e), release from lockout; the bypass is common practice, no source',
  },
  {
    id: 'SAF-11',
    text: 'What was shown shall count as its worst state once it has lapsed, until a person shows it again.',
    source: '29 CFR 1910.147(d)(5)(ii), verification continued while energy can build up again',
  },
  {
    id: 'SAF-12',
    text: 'An act that by itself makes an energy worse shall be recorded so, whatever its outcome.',
    source: 'common practice, no source',
  },
  {
    id: 'SAF-13',
    text: 'A person shall go back to an earlier step only where every state possible here is possible there.',
    source: 'common practice, no source',
  },
];

/** Every requirement. A test compares the table with the tests that quote its ids, both ways. */
export const REQUIREMENTS: readonly Requirement[] = [
  ...OF_THIS_FOLDER,
  ...ENERGY_ISOLATION,
  ...HOLD_POINTS,
  ...RELIABILITY,
  ...FAULTS,
  ...SIGNATURES,
  ...WEB_SECURITY,
  ...INTERFACE,
];
