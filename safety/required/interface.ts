import type { Requirement } from './requirement.ts';

const MEMORY = 'common practice, no source';
const WCAG = (criteria: string) => `WCAG 2.2, ${criteria}`;

/** What a machine can say of a page. */
const BY_MACHINE: readonly Requirement[] = [
  {
    id: 'UI-01',
    text: 'Every page shall stand the checks of axe for WCAG 2.2 A and AA and its best practice, in every state that it can be in.',
    source: `axe-core documentation; states: ${MEMORY}`,
  },
  {
    id: 'UI-02',
    text: 'Text shall stand out from its ground by 4.5 to 1 in each theme.',
    source: WCAG('1.4.3'),
  },
  {
    id: 'UI-03',
    text: 'Borders of controls, the ring of focus, marks and lines of pictures shall stand out by 3 to 1.',
    source: WCAG('1.4.11'),
  },
  {
    id: 'UI-04',
    text: 'Every control, link and picture shall have a name, and every field a label.',
    source: WCAG('1.1.1, 1.3.1, 2.4.4, 3.3.2, 4.1.2'),
  },
  {
    id: 'UI-05',
    text: 'Every page shall have a title, its language, a way past the head, headings in order and one main part.',
    source: WCAG('2.4.1, 2.4.2, 3.1.1'),
  },
  {
    id: 'UI-06',
    text: 'A page shall not keep anybody from enlarging it, put one control into another, or hide what scrolls from the keyboard.',
    source: WCAG('1.4.4, 2.1.1, 4.1.2'),
  },
  { id: 'UI-07', text: 'What is pressed shall be at least 24 by 24 CSS pixels.', source: WCAG('2.5.8') },
  {
    id: 'UI-08',
    text: 'A page shall fit a width of 320 CSS pixels and the spacing that a reader sets, without scrolling sideways.',
    source: WCAG('1.4.4, 1.4.10, 1.4.12'),
  },
  {
    id: 'UI-09',
    text: 'A page shall work upright and on its side.',
    source: WCAG('1.3.4'),
  },
  {
    id: 'UI-10',
    text: 'What is kept, refused, released or away shall be told to a screen reader without moving the focus.',
    source: WCAG('4.1.3'),
  },
];

/** What takes a person, or a script that does as one. */
const BY_SCRIPT: readonly Requirement[] = [
  {
    id: 'UI-11',
    text: 'A whole job shall be possible by the keyboard alone.',
    source: WCAG('2.1.1, 2.1.2, 2.4.3'),
  },
  {
    id: 'UI-12',
    text: 'The focus shall be seen, and nothing that stays on the screen shall lie over it.',
    source: WCAG('2.4.7, 2.4.11'),
  },
  {
    id: 'UI-13',
    text: 'Colour shall never be the only sign of anything.',
    source: WCAG('1.4.1'),
  },
  {
    id: 'UI-14',
    text: 'Choosing or typing alone shall send nothing and lead nowhere.',
    source: WCAG('3.2.2'),
  },
  {
    id: 'UI-15',
    text: 'Who is about to be signed out shall be warned, and shall stay by one key, until the time that no key makes longer.',
    source: WCAG('2.2.1'),
  },
  {
    id: 'UI-16',
    text: 'What a signature stands for shall be seen before it is given, and leaving it shall leave none.',
    source: WCAG('3.3.4'),
  },
  {
    id: 'UI-17',
    text: 'What was given once shall not have to be typed again, but for the PIN.',
    source: WCAG('3.3.7'),
  },
  {
    id: 'UI-18',
    text: 'Signing in shall take what a password manager fills in or a person pastes.',
    source: WCAG('3.3.8'),
  },
  {
    id: 'UI-19',
    text: 'Nothing shall need dragging, and help shall stand in the same place on every page.',
    source: WCAG('2.5.7, 3.2.6'),
  },
  {
    id: 'UI-20',
    text: 'A wrong entry shall be named in words at its field with the way to right it, and the focus shall go there.',
    source: `${WCAG('3.3.1, 3.3.3')}; focus: ${MEMORY}`,
  },
  {
    id: 'UI-21',
    text: 'What the browser hands to a screen reader shall hold, in this order, what was found, the step, its warning, its acts; and of a hold the state of each energy before the signature.',
    source: MEMORY,
  },
];

const ERGONOMICS: readonly Requirement[] = [
  {
    id: 'UI-22',
    text: 'Each page shall be held against the seven principles of dialogue by people who do the work.',
    source: 'ISO 9241-110:2020, through a summary',
    notBuilt:
      'The principles ask whether it suits those who do the work: it takes technicians at the screen, with their own valves. No test stands for them.',
  },
  {
    id: 'UI-23',
    text: 'Strong colour shall stand only where something is abnormal or live: signal words and energies.',
    source: 'ISA-101.01-2015, through summaries',
  },
  {
    id: 'UI-24',
    text: 'Every colour shall come with a word, a shape or a place that says the same.',
    source: `${WCAG('1.4.1')}; ISA-101: ${MEMORY}`,
  },
  {
    id: 'UI-25',
    text: 'The instruction of a card shall be at least 4 mm high at 0.7 m, 20 minutes of arc.',
    source: `ISO 11064-5, from memory`,
  },
  {
    id: 'UI-26',
    text: 'A button shall name its act, never only yes, OK or cancel.',
    source: MEMORY,
  },
  {
    id: 'UI-27',
    text: 'Dates, decimal signs and units shall be read in one way only.',
    source: MEMORY,
  },
];

const GLOVES: readonly Requirement[] = [
  {
    id: 'UI-28',
    text: 'Keys of the PIN shall be at least 19 mm (72 CSS pixels) and everything else that acts 44 pixels, for a gloved hand.',
    source: 'MIL-STD-1472E, 5.4.1.3.7 and 5.4.3.1.3.3; 44: WCAG 2.2, 2.5.5',
  },
  {
    id: 'UI-29',
    text: 'The sizes shall be measured in millimetres on each tablet that a site uses.',
    source: MEMORY,
    notBuilt:
      'A CSS pixel is as large as the maker of a tablet made it: it takes the tablets of a site and a ruler. Sizes in CSS pixels are tested, see UI-28.',
  },
  {
    id: 'UI-30',
    text: 'Two taps within half a second shall be one act, and nothing shall move under the finger.',
    source: MEMORY,
  },
  {
    id: 'UI-31',
    text: 'What makes safe or leaves shall not touch the button that goes on, and nothing shall need hovering or a long press.',
    source: MEMORY,
  },
  {
    id: 'UI-32',
    text: 'A scanner that ends with Enter shall fill its field and send no other form.',
    source: MEMORY,
  },
  {
    id: 'UI-33',
    text: 'There shall be a light and a dark theme, and one for the sun with 7 to 1.',
    source: `${WCAG('1.4.6')}; sun: ${MEMORY}`,
  },
];

const SIGNAL_WORDS: readonly Requirement[] = [
  {
    id: 'UI-34',
    text: 'There shall be four signal words, each written out on its one colour.',
    source: 'ANSI Z535.4-2007, 4.14, as quoted by others; colours: from memory',
  },
  {
    id: 'UI-35',
    text: 'A caution shall say the hazard, what it does, and how it is avoided.',
    source: 'ANSI Z535.6, as quoted by others',
  },
  {
    id: 'UI-36',
    text: 'The triangle shall stand with the three words of injury and never with NOTICE.',
    source: 'ANSI Z535.4-2007, 4.14, as quoted by others',
  },
  {
    id: 'UI-37',
    text: 'A printed caution shall show its word in a box without colour.',
    source: `ANSI Z535.6; kinds: ${MEMORY}`,
  },
  {
    id: 'UI-38',
    text: 'Symbols of safety shall have the shapes of their kind: triangle for a warning, disc for a duty, ring for what is forbidden.',
    source: 'ISO 3864-2, as quoted by others; shapes: from memory',
  },
  {
    id: 'UI-39',
    text: 'Signal words shall stand out from their panels by 4.5 to 1.',
    source: `${WCAG('1.4.3')}; colours stand in for those of ANSI Z535: from memory`,
  },
  {
    id: 'UI-40',
    text: 'DANGER shall not stand where the hazard is isolated and shown safe.',
    source: MEMORY,
    notBuilt:
      'It stands before the first break of a body too, though drains were read: what is caught behind a plug shows on no drain.',
  },
  {
    id: 'UI-41',
    text: 'A warning shall come before its act, a step shall be one act, and a thing shall have one name.',
    source: `IEC/IEEE 82079-1:2019; rules: ${MEMORY}`,
  },
];

const PRINT_AND_PICTURES: readonly Requirement[] = [
  {
    id: 'UI-42',
    text: 'Each printed page of a record shall bear tag, job, revision, page x of y, when it was printed and the head of the log.',
    source: MEMORY,
  },
  {
    id: 'UI-43',
    text: 'A caution and its step, and a step and its place to sign, shall not be parted by the end of a page.',
    source: MEMORY,
  },
  { id: 'UI-44', text: 'A print shall be readable in grey, its states as words.', source: MEMORY },
  {
    id: 'UI-45',
    text: 'A4 and Letter shall both hold the last column, and long tags shall wrap.',
    source: MEMORY,
  },
  {
    id: 'UI-46',
    text: 'The print of an open job shall say OPEN and list what is missing.',
    source: MEMORY,
  },
  {
    id: 'UI-47',
    text: 'Lines of a picture shall differ by dash and mark as well, and be named where they are.',
    source: `${WCAG('1.4.1')}; the rest: ${MEMORY}`,
  },
  {
    id: 'UI-48',
    text: 'A picture shall use no colour for a line that is fainter than 3 to 1 on its ground.',
    source: `${WCAG('1.4.11')}`,
  },
  {
    id: 'UI-49',
    text: 'Nothing in a picture shall be told apart by hue alone, so that no loss of colour vision takes anything away.',
    source: MEMORY,
  },
  {
    id: 'UI-50',
    text: 'Every curve shall have a table with the same numbers, its limits drawn and named.',
    source: MEMORY,
  },
];

/** What the screen shall be to hands in gloves, to eyes in bad light, and to who cannot see it. */
export const INTERFACE: readonly Requirement[] = [
  ...BY_MACHINE,
  ...BY_SCRIPT,
  ...ERGONOMICS,
  ...GLOVES,
  ...SIGNAL_WORDS,
  ...PRINT_AND_PICTURES,
];
