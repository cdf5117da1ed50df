import type { Requirement } from './requirement.ts';

const MEMORY = 'common practice, no source';

/** How PINs are kept, and what a guesser meets. */
const PINS: readonly Requirement[] = [
  {
    id: 'WS-01',
    text: 'A PIN shall be stored only as a salted hash that is slow by design: scrypt with N at least 2^17, r 8, p 1.',
    source: 'OWASP ASVS 5.0, 11.4.2 and appendix C; OWASP password storage cheat sheet',
  },
  {
    id: 'WS-02',
    text: 'The hash shall run at that cost in production, with the memory that it needs.',
    source: `OWASP password storage cheat sheet; that Node refuses it at its own limit was seen in a test`,
  },
  {
    id: 'WS-03',
    text: 'Each hash shall have a random salt of its own of at least 32 bits; 128 are used.',
    source: `NIST SP 800-63B rev. 4 draft, 5.1.1.2; 128: ${MEMORY}`,
  },
  {
    id: 'WS-04',
    text: 'The hash shall be keyed with a key that lies neither in the database nor in the data folder.',
    source: 'OWASP password storage cheat sheet, peppering; NIST SP 800-63B rev. 4 draft, 5.1.1.2',
  },
  {
    id: 'WS-05',
    text: 'The files of the server shall be readable by its own user alone, and it shall say so when it runs as administrator.',
    source: MEMORY,
  },
  {
    id: 'WS-06',
    text: 'The cost shall be stored with the hash, and an old one shall be made anew when its PIN next matches.',
    source: `OWASP password storage cheat sheet, upgrading; ${MEMORY} for the rest`,
  },
  {
    id: 'WS-07',
    text: 'Hashes shall run a few at a time and wait a few in a row; beyond, people shall be asked to come again while others are served.',
    source: `OWASP ASVS 5.0, 2.4.1 and 15.2.2; the numbers: ${MEMORY}`,
  },
  {
    id: 'WS-08',
    text: 'Wrong tries shall be counted by account and not by address, and a restart shall not forget them.',
    source: `OWASP authentication cheat sheet; OWASP ASVS 5.0, 6.1.1 and 6.3.1; restart: ${MEMORY}`,
  },
  {
    id: 'WS-09',
    text: 'After a few wrong tries each wait shall double, and from the tenth on another person shall be needed before a day is over; never more than 100 tries a day.',
    source: 'NIST SP 800-63B rev. 4 draft, 5.2.2 (100 in a row, 10 for a short secret)',
  },
  {
    id: 'WS-10',
    text: 'Wrong tries in a name shall not keep its owner from signing at the screens where they sign in, nor anybody else, and shall name the screen that they came from.',
    source: `OWASP authentication cheat sheet, denial by lockout; by known screens: ${MEMORY}`,
  },
  {
    id: 'WS-11',
    text: 'Every way in shall count together: signing in, signing a step, choosing a PIN, as form and as JSON.',
    source: 'OWASP ASVS 5.0, 6.1.3 and 6.3.4',
  },
  {
    id: 'WS-12',
    text: 'A name that nobody has and a wrong PIN shall look the same and take the same time.',
    source: `OWASP ASVS 5.0, 6.3.8; within a tenth: ${MEMORY}`,
  },
  {
    id: 'WS-13',
    text: 'A PIN that is guessed first shall be refused: repeated, in a row, a date or a year, a number of the site or of its owner.',
    source: `OWASP ASVS 5.0, 6.2.4 and 6.2.11; NIST SP 800-63B rev. 4 draft, 5.1.1.2; the list of shapes: ${MEMORY}`,
  },
  {
    id: 'WS-14',
    text: 'Nobody shall choose another person’s PIN: a code that is good once and for a day lets them choose it, and a change asks for the PIN of now.',
    source: 'OWASP ASVS 5.0, 6.2.2, 6.2.3, 6.4.1 and 6.4.6',
  },
  {
    id: 'WS-15',
    text: 'The field of a PIN shall hide it, take a pasted one, and compare it exactly; there shall be no hints.',
    source: 'OWASP ASVS 5.0, 6.2.6 to 6.2.8 and 6.4.2',
  },
  {
    id: 'WS-16',
    text: 'There shall be no account that nobody made; the first one is made once, on this machine or with a token that only the console has.',
    source: `OWASP ASVS 5.0, 6.3.2; the token: ${MEMORY}`,
  },
];

const SESSIONS: readonly Requirement[] = [
  {
    id: 'WS-17',
    text: 'The token of a session shall hold at least 128 random bits and be known to the server.',
    source: 'OWASP ASVS 5.0, 7.2.1 to 7.2.3',
  },
  {
    id: 'WS-18',
    text: 'Each sign-in shall make a new token and end the one before.',
    source: 'OWASP ASVS 5.0, 7.2.4',
  },
  {
    id: 'WS-19',
    text: 'The cookie shall be unseen by scripts and other sites, and under TLS be sent by TLS alone under a name that only TLS may set.',
    source: `OWASP ASVS 5.0, 3.3.1 to 3.3.4; Strict: ${MEMORY}`,
  },
  {
    id: 'WS-20',
    text: 'A session shall end after half an hour without a hand at the screen and after twelve hours in any case; what the screen asks by itself shall not keep it open.',
    source: `OWASP ASVS 5.0, 7.1.1, 7.3.1 and 7.3.2; OWASP session management cheat sheet; the last part: ${MEMORY}`,
  },
  {
    id: 'WS-21',
    text: 'Signing out, retiring, a new code and another role shall end sessions at once.',
    source: 'OWASP ASVS 5.0, 7.4.1, 7.4.2 and 8.3.2',
  },
  {
    id: 'WS-22',
    text: 'The way to sign out shall stand on every page, and whoever adds people shall be able to end anybody’s sessions.',
    source: 'OWASP ASVS 5.0, 7.4.4 and 7.4.5',
  },
  {
    id: 'WS-23',
    text: 'Each signature shall ask for the PIN again: a session alone signs nothing.',
    source: 'OWASP ASVS 5.0, 7.5.3; 21 CFR 11.200(a)(1)',
  },
  {
    id: 'WS-24',
    text: 'A session that runs out shall not lose what was typed: it is offered to the same person after signing in, and to nobody else.',
    source: `${MEMORY}; with scripts the browser keeps it, without them the server does`,
  },
];

const REQUESTS: readonly Requirement[] = [
  {
    id: 'WS-25',
    text: 'Looking at a page shall change nothing.',
    source: 'OWASP ASVS 5.0, 3.5.3',
  },
  {
    id: 'WS-26',
    text: 'An act shall be refused unless it comes from a page of this server, by what the browser says of itself; one that says nothing is refused.',
    source: `OWASP cross-site request forgery cheat sheet; OWASP ASVS 5.0, 3.5.1 and 3.5.2; the last part: ${MEMORY}`,
  },
  {
    id: 'WS-27',
    text: 'The same shall hold over plain HTTP by a name of the network, where browsers tell less.',
    source: `${MEMORY}; what browsers tell was seen in a test`,
  },
  {
    id: 'WS-28',
    text: 'A request shall name one of this server’s own addresses, and shall be turned away before anything is looked up if it does not.',
    source: `NCC Group wiki, preventing DNS rebinding attacks; the list of addresses: ${MEMORY}`,
  },
  {
    id: 'WS-29',
    text: 'That check shall hold without TLS and without help from the name service.',
    source: 'NCC Group wiki, preventing DNS rebinding attacks',
  },
  {
    id: 'WS-30',
    text: 'Headers that a proxy sets shall be believed in nothing: no address, no host and no count follows from them.',
    source: 'OWASP ASVS 5.0, 4.1.3 and 15.3.4',
  },
  {
    id: 'WS-31',
    text: 'No other site shall be allowed to read an answer.',
    source: 'OWASP ASVS 5.0, 3.4.2',
  },
  {
    id: 'WS-32',
    text: 'Every answer shall carry a policy under which only this server’s own files load and run, and no script in a page does.',
    source: `OWASP ASVS 5.0, 3.4.3 and 3.4.6; the exact list: ${MEMORY}`,
  },
  {
    id: 'WS-33',
    text: 'Every answer shall name its type and character set, forbid guessing it, be kept by nobody, and tell other sites nothing of where one came from.',
    source:
      `OWASP ASVS 5.0, 3.4.4, 3.4.5 and 4.1.1; not to be kept: ${MEMORY}. The referrer goes to this server itself alone ` +
      '(same-origin) and not nowhere (no-referrer): with that one browsers name no origin with a plain form, and WS-27 could not hold',
  },
  {
    id: 'WS-34',
    text: 'Beyond this machine PINs shall travel by TLS 1.2 or newer, kept to for a year by the browser; doing without shall be somebody’s choice that every page shows.',
    source: `OWASP ASVS 5.0, 3.4.1, 12.1.1 and 12.3.1; plain HTTP as a marked choice: ${MEMORY}`,
  },
  {
    id: 'WS-35',
    text: 'Every page shall work without anything from outside this server.',
    source: MEMORY,
  },
];

const INPUT: readonly Requirement[] = [
  {
    id: 'WS-36',
    text: 'The order of the steps shall be the server’s, whatever is sent.',
    source: 'OWASP ASVS 5.0, 2.3.1 and 8.3.1',
  },
  {
    id: 'WS-37',
    text: 'An act where harm cannot be undone shall need two people.',
    source: 'OWASP ASVS 5.0, 2.3.5',
  },
  {
    id: 'WS-38',
    text: 'Every field shall be read by what is allowed in it, of one type, length and form; all else is refused in words.',
    source: `OWASP ASVS 5.0, 2.2.1 to 2.2.3 and 15.3.5; what is tried: ${MEMORY}`,
  },
  {
    id: 'WS-39',
    text: 'No field shall set what only the server knows: person, role, time, place or hash.',
    source: 'OWASP ASVS 5.0, 15.3.3',
  },
  {
    id: 'WS-40',
    text: 'No text shall become part of a statement to the database, and what is checked shall still be so when it is written.',
    source: 'OWASP ASVS 5.0, 1.2.4, 2.3.3 and 15.4.2',
  },
  {
    id: 'WS-41',
    text: 'What people typed shall stand as text wherever it is shown.',
    source: 'OWASP ASVS 5.0, 1.2.1 and 3.2.2',
  },
  {
    id: 'WS-42',
    text: 'No cell of a table that is taken along shall begin a formula, and a number with its minus shall stay one.',
    source: `OWASP ASVS 5.0, 1.2.10; the minus: ${MEMORY}`,
  },
  {
    id: 'WS-43',
    text: 'Knowing an id shall give no right: what is one person’s alone is not there for another.',
    source: 'OWASP ASVS 5.0, 8.2.1 to 8.2.3',
  },
  {
    id: 'WS-44',
    text: 'An uploaded file shall be bounded in size, type and count, and shall never be run or shown as a page.',
    source: `OWASP ASVS 5.0, chapter 5; ${MEMORY}`,
  },
];

const RUNNING: readonly Requirement[] = [
  {
    id: 'WS-45',
    text: 'Signing in, a wrong PIN, an act that was refused, a way round that was tried and a fault shall each be written down with who, what, where and when.',
    source: 'OWASP ASVS 5.0, 16.2.1 and 16.3.1 to 16.3.4',
  },
  {
    id: 'WS-46',
    text: 'Every time that is kept or shown to be compared shall say its zone.',
    source:
      `OWASP ASVS 5.0, 16.2.2. Whether the machine’s clock is kept right is not shown: no way to ask that is the ` +
      `same on every system; ${MEMORY}`,
  },
  {
    id: 'WS-47',
    text: 'No PIN, code or token shall stand in any output, in the database or in a file.',
    source: `OWASP ASVS 5.0, 16.2.5; found by a PIN that nothing else holds: ${MEMORY}`,
  },
  {
    id: 'WS-48',
    text: 'What somebody typed shall not make a second line of a log, and no log shall be served as a page.',
    source: 'OWASP ASVS 5.0, 16.4.1 and 16.4.2',
  },
  {
    id: 'WS-49',
    text: 'A copy of the logs shall go to another system.',
    source: 'OWASP ASVS 5.0, 16.4.3',
    notBuilt:
      'nothing is sent by itself: the operations log goes to the standard output, where the system can pass it on; the log of ' +
      'the site goes to another machine where somebody has the backup command run into a folder of one, or saves an export; checkpoints ' +
      'can be named onto another disk',
  },
  {
    id: 'WS-50',
    text: 'Where something breaks, nothing shall be done or shown, and the person shall be told plainly, without the inside.',
    source: 'OWASP ASVS 5.0, 16.5.1 and 16.5.3',
  },
  {
    id: 'WS-51',
    text: 'Nothing shall be served but the routes of the program: no folder, no source, no debug page, no method besides looking and sending.',
    source: 'OWASP ASVS 5.0, 13.4.1 to 13.4.5 and 15.2.3',
  },
  {
    id: 'WS-52',
    text: 'A slow or greedy caller shall be cut off, and others shall be served meanwhile.',
    source: `Node.js security cheat sheet of OWASP (size limits); the rest: ${MEMORY}`,
  },
];

/**
 * What is asked of a server on a local network that people enter by name and PIN. A PIN is below every published
 * floor for a single secret (OWASP ASVS 5.0, 6.2.1, 6.2.9 and 6.3.3; NIST SP 800-63B rev. 4): what stands against
 * that is the slow keyed hash, the throttle, the PIN again for each act, named screens, and longer PINs where a site
 * asks for them.
 */
export const WEB_SECURITY: readonly Requirement[] = [...PINS, ...SESSIONS, ...REQUESTS, ...INPUT, ...RUNNING];
