import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { putRight } from './finding.ts';

type Own = 'markFirst' | 'notMarked' | 'benchOpen' | 'notRinsed' | 'shutOffGrade' | 'shutOffNotEnough';

const phase = 'isolate';
const makeSafe = 'haltIsolating';

/**
 * Before anything of the valve is opened: marks made, and the line shut off surely enough for what would come out.
 * On the bench nothing stands behind the joints, and a person says so.
 */
export function openLine<const Next extends string>({
  next,
}: {
  readonly next: Next;
}): Readonly<Record<Own, Step<Own | Next | 'haltIsolating'>>> {
  return {
    markFirst: {
      kind: 'reading',
      phase,
      title: 'Mark what comes apart, before it does',
      how: 'A line across connector and stem, across case and cover, across bonnet and body. Write rings and thread down, and the adjuster where it has one: the next person wants them.',
      why: 'What goes back where it stood needs no second setting.',
      do: ['Mark the connector on its stem.', 'Mark case and bonnet across their joints.'],
      asks: [yesNo('marked', 'Marked; photos taken where the site allows them')],
      judge: { rule: 'allYes', with: { fields: 'marked' } },
      ways: {
        yes: { to: { by: 'place', ways: { bench: 'benchOpen', line: 'shutOffGrade' } } },
        no: { to: 'notMarked' },
      },
      makeSafe,
    },
    notMarked: {
      kind: 'question',
      phase,
      title: 'It is not marked',
      how: 'Paint, scribe or punch by the site’s rule. Where none may be made, distances are measured and written down instead.',
      choices: {
        again: { label: 'Marked now', to: 'markFirst' },
        written: {
          label: 'No mark may be made here: measured and written down',
          to: { by: 'place', ways: { bench: 'benchOpen', line: 'shutOffGrade' } },
          reason: true,
        },
      },
      makeSafe,
    },
    benchOpen: {
      kind: 'reading',
      phase,
      title: 'Record that nothing stands behind the joints',
      how: 'On the bench there is no line: both ends of the body are open, it was rinsed, and nothing is trapped between plug and bonnet.',
      asks: [
        yesNo('bodyOpen', 'I looked through both ends; the plug was moved once and nothing came'),
        yesNo('bodyClean', 'Rinsed and dry; the paper on it says what was in it'),
      ],
      judge: { rule: 'allYes', with: { fields: 'bodyOpen bodyClean' } },
      ways: {
        yes: { to: next, sets: { isolationGrade: 'absent', processFlow: 'absent', gasTest: 'absent' } },
        no: { to: 'notRinsed' },
      },
      makeSafe,
    },
    notRinsed: putRight<Own | 'haltIsolating'>({
      phase,
      title: 'Something may still be in the body',
      how: 'Rinse and drain it by the site’s rule, the plug moved once so that what stands above it comes. Without its paper it is taken for what the line carried.',
      again: ['Rinsed, moved and dry: record it', 'benchOpen'],
      stop: ['Leave it and stop', 'haltIsolating'],
      makeSafe,
    }),
    shutOffGrade: {
      kind: 'reading',
      phase,
      title: 'Check how the line is shut off, on the worse side',
      how: '{processFluid} wants at least: {shutOffWanted}. The sheet has: {shutOffOnSheet}. A lesser one rests on a risk assessment with its number.',
      why: 'A block valve that passes shows itself when the bonnet is off.',
      asks: [
        {
          name: 'shutOffBy',
          label: 'Shut off by',
          type: 'choice',
          choices: [
            { value: 'double block and bleed', label: 'Two valves and a bleed between them' },
            { value: 'positive', label: 'A blank, or pipe taken off' },
            { value: 'block and bleed', label: 'One valve and a bleed, watched' },
            { value: 'block only', label: 'One valve, not tried' },
          ],
        },
        { name: 'assessment', label: 'Number of the risk assessment', type: 'text', optional: true },
      ],
      judge: { rule: 'shutOff' },
      ways: {
        enough: { to: next, sets: { isolationGrade: 'enough' } },
        'wants an assessment': { to: 'shutOffNotEnough' },
        'not enough': { to: 'shutOffNotEnough' },
      },
      makeSafe,
    },
    shutOffNotEnough: {
      kind: 'question',
      phase,
      title: 'The line is not shut off surely enough to be opened',
      how: '{processFluid} wants at least: {shutOffWanted}. Gloves and care are no shut-off.',
      choices: {
        again: { label: 'Blank set, or assessment in hand: look again', to: 'shutOffGrade' },
        stop: { label: 'Leave it and stop', to: 'haltIsolating' },
      },
      makeSafe,
    },
  } as Readonly<Record<Own, Step<Own | Next | 'haltIsolating'>>>;
}
