import type { Requirement } from './requirement.ts';

const PART_11 = '21 CFR 11 as a yardstick, not as law for a valve shop';

/** What an inspector asks of a signature and of the records behind it. */
export const SIGNATURES: readonly Requirement[] = [
  {
    id: 'SA-09',
    text: 'Every act shall carry the screen that it came from, and shall say so where that is not one of the site’s own.',
    source: `${PART_11}: 11.10(h); named screens: common practice, no source`,
  },
  {
    id: 'SA-10',
    text: 'Nobody shall get a PIN before they were shown that they answer for what is signed with it, and took that on in an entry.',
    source: `${PART_11}: 11.10(i) and (j); on the page where the PIN is chosen: common practice, no source`,
  },
  {
    id: 'SA-14',
    text: 'Whoever lets somebody choose a PIN shall have made sure who it is, and the entry shall say who did and how.',
    source: `${PART_11}: 11.100(b)`,
  },
  {
    id: 'SA-15',
    text: 'A signature shall need a name and a PIN, never one of the two.',
    source: `${PART_11}: 11.200(a)(1)`,
  },
  {
    id: 'SA-16',
    text: 'Each signature shall ask for both, and one given at somebody else’s screen shall leave the session theirs.',
    source: `${PART_11}: 11.200(a)(1)(i) and (ii); the borrowed screen: common practice, no source`,
  },
  {
    id: 'SA-17',
    text: 'Nobody shall be able to set or read another’s PIN: a code is given, its owner chooses, and both are entries.',
    source: `${PART_11}: 11.200(a)(2) and (3); by a code: common practice, no source`,
  },
  {
    id: 'SA-18',
    text: 'No two people shall have one id or one name, and an id shall never be given again.',
    source: `${PART_11}: 11.300(a) and 11.100(a)`,
  },
  {
    id: 'SA-19',
    text: 'Whoever looks over the accounts shall see each with its role, its last use, where it is open and how old its PIN is; PINs shall not be changed by the calendar.',
    source: `${PART_11}: 11.300(b); no forced change: NIST SP 800-63B rev. 4 draft and OWASP ASVS 5.0, 6.2.10`,
  },
  {
    id: 'SA-20',
    text: 'A signer shall be stopped at once, in open sessions and at the next signature, and what they signed before shall stand.',
    source: `${PART_11}: 11.300(c)`,
  },
  {
    id: 'SA-21',
    text: 'A run of wrong PINs shall stand above the next page that the safety officer opens, and be an entry.',
    source: `${PART_11}: 11.300(d); five in a row: common practice, no source`,
  },
];
