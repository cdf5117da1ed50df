import type { Requirement } from './requirement.ts';

const PART_11 = '21 CFR 11 as a yardstick, not as law for a valve shop';

/** What an inspector asks of a signature and of the records behind it. */
export const SIGNATURES: readonly Requirement[] = [
  {
    id: 'SA-01',
    text: 'A changed byte of the log shall be found, and the first bad entry named.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(a)',
  },
  {
    id: 'SA-02',
    text: 'The whole log shall leave as lines that verify alone, without this server.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(b)',
  },
  {
    id: 'SA-03',
    text: 'An export of an earlier release shall open in this one.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(c)',
  },
  {
    id: 'SA-04',
    text: 'Each address shall be open to the roles that are written down for it, and to nobody else.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(d) and (g)',
  },
  {
    id: 'SA-05',
    text: 'A correction shall keep both values, both people and the reason in sight.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(e)',
  },
  {
    id: 'SA-06',
    text: 'Nothing shall take a line out of the log.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(e)',
  },
  {
    id: 'SA-07',
    text: 'No stream of acts, however mixed, shall pass a step that the machine does not.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(f)',
  },
  {
    id: 'SA-08',
    text: 'Role and right shall be looked up at the moment of the act: one taken away while a page is open signs nothing.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.10(g)',
  },
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
    id: 'SA-11',
    text: 'A signature shall show the printed name, the time and what it means, on the screen, in print and in the export.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.50',
  },
  {
    id: 'SA-12',
    text: 'A signature shall be bound to exactly what was shown, so that one that is moved is found.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.70',
  },
  {
    id: 'SA-13',
    text: 'A signature shall stay with the person who gave it, whoever bears that name later.',
    source: '21 CFR 11 as a yardstick, not as law for a valve shop: 11.100(a)',
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
  {
    id: 'SA-22',
    text: 'A reading that two people have to read shall keep its hold open until a second one did, who is not the first.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: clause 6',
  },
  {
    id: 'SA-23',
    text: 'A change shall be refused without its reason, and the lines of a job that nobody has reviewed shall be counted.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: clause 9',
  },
  {
    id: 'SA-24',
    text: 'Each line shall hold who, what, when in UTC, and about what.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: clause 12.4',
  },
  {
    id: 'SA-25',
    text: 'A signature shall be linked for good to what it is under, with its date and time.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: clause 14',
  },
  {
    id: 'SA-26',
    text: 'A backup shall be restored in a drill, and what is lost with it shall show.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: clauses 7.2 and 8.2',
  },
  {
    id: 'SA-27',
    text: 'Signing in for a signature shall follow the draft of 2025.',
    source: 'EU GMP annex 11 (2011) as a yardstick, as quoted by others: the draft of July 2025',
    notBuilt:
      'its final text has not been seen; who proves a signature is one class, and times carry their zone',
  },
  {
    id: 'SA-28',
    text: 'A line shall be written when it happens, with its person, by the clock of the server, without a gap, and stay as it was first written.',
    source: 'MHRA GXP data integrity guidance (2018), the topics of ALCOA+',
  },
  {
    id: 'SA-29',
    text: 'A time from outside shall be kept as a claim only, and a line written later shall carry its reason.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-30',
    text: 'What is signed shall be what was shown, on a page of its own number, once, for a short time, and void as soon as a reading changes.',
    source: 'OWASP Transaction Authorization cheat sheet, 1.1, 1.4, 2.3, 2.6, 2.9 and 2.10',
  },
  {
    id: 'SA-31',
    text: 'A supervisor who did any of the work since the last hold shall not sign it.',
    source: '10 CFR 50 appendix B, criterion X',
  },
  {
    id: 'SA-32',
    text: 'Canonical text shall sort names by UTF-16 code units at every depth and leave arrays as they are.',
    source: 'RFC 8785, 3.2.3, and its published vectors',
  },
  {
    id: 'SA-33',
    text: 'A name given twice, and a number that is none or is beyond a double, shall be refused before anything is hashed.',
    source: 'RFC 8785, 3.1 and 3.2.2.3; doubles at parsing: common practice, no source',
  },
  {
    id: 'SA-34',
    text: 'What must stay exact shall be text: times, hashes, readings as typed with their unit; no bare number shall be beyond 2^53 - 1.',
    source: 'RFC 8785, appendix D; units: common practice, no source',
  },
  {
    id: 'SA-35',
    text: 'Text shall be kept as it was given, without another form of the same letters.',
    source: 'RFC 8785, 3.1',
  },
  {
    id: 'SA-36',
    text: 'Canonical text shall be UTF-8 without white space, and minus zero shall be zero.',
    source: 'RFC 8785, 3.2.1, 3.2.2.3 and 3.2.4',
  },
  {
    id: 'SA-37',
    text: 'The stored bytes shall be what is hashed, and they shall be canonical.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-38',
    text: 'The hashes of the log shall stand in a tree of one root.',
    source: 'RFC 6962, 2.1',
    notBuilt:
      'a chain stands in its place: an auditor here has the whole export, and a chain needs no second structure that could disagree with it',
  },
  {
    id: 'SA-39',
    text: 'A short proof shall show that an entry is under a root.',
    source: 'RFC 6962, 2.1.1',
    notBuilt:
      'goes with the tree: one job verifies alone by its own chain, and its check number stands on its record',
  },
  {
    id: 'SA-40',
    text: 'A short proof shall show that an older root is a beginning of a newer one.',
    source: 'RFC 6962, 2.1.2',
    notBuilt: 'goes with the tree: the whole export is held against the older check number instead',
  },
  {
    id: 'SA-41',
    text: 'A signed head shall say how far the log had come and when, and no later one shall have an earlier time.',
    source: 'RFC 6962, 3.5',
  },
  {
    id: 'SA-42',
    text: 'A number from paper shall be told to fit, to be of another log, or to be newer than this one.',
    source: 'RFC 6962, 7.3; on a page: common practice, no source',
  },
  {
    id: 'SA-43',
    text: 'A verifier apart from the program shall need nothing but the export and what is on paper.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-44',
    text: 'A number that was written down shall still verify when the log has grown, and show a log that was cut or written anew.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-45',
    text: 'A head that is signed by another key shall be refused.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-46',
    text: 'The heads shall be kept outside the database, where another disk may be named, and a missed one shall be seen.',
    source: 'OWASP ASVS 5.0, 16.4.3, logs go to a separate system; when: common practice, no source',
  },
  {
    id: 'SA-47',
    text: 'A start on a log that is shorter than its last head, or another one, shall take no new entries of the work and say why.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-48',
    text: 'A restore shall be an entry by two people, with the old head and the new one.',
    source: 'common practice, no source',
  },
  {
    id: 'SA-49',
    text: 'The database shall refuse to change, replace or take away a line of the log, and where its triggers were dropped first, the verifier shall find it.',
    source: 'SQLite, lang_conflict: REPLACE passes delete triggers by unless recursive_triggers is on',
  },
  {
    id: 'SA-50',
    text: 'Lines shall be numbered without a gap, in the log and in each stream, and what was refused and matters shall be a line as well.',
    source: 'common practice, no source',
  },
];
