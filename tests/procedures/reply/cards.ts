import { compile } from '../../../procedures/compile.ts';
import { type Field, procedure } from '../../../procedures/vocabulary.ts';
import { MORE_CARDS } from './more-cards.ts';

const yesNo = (name: string, label: string): Field => ({
  name,
  label,
  type: 'choice',
  choices: [
    { value: 'yes', label: 'Yes' },
    { value: 'no', label: 'No' },
  ],
});
const flow = (name: string, label: string): Field => ({
  name,
  label,
  type: 'choice',
  optional: true,
  choices: [
    { value: 'no flow', label: 'No flow' },
    { value: 'flows', label: 'It flows' },
  ],
});
const read = { kind: 'reading', phase: 'work', makeSafe: 'safe', judge: { rule: 'record' } } as const;
const onSignal = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', onCase: true } as const;
const kept = { kept: { to: 'safe' } } as const;

/**
 * Cards of every kind that replies are tried on, so that a new revision of a real procedure changes no meaning here.
 * It is compiled, but never proved or served.
 */
export const REPLY_CARDS = compile(
  procedure({
    id: 'reply-cards',
    title: 'Cards for replies',
    revisions: [{ letter: 'A', date: '2026-11-25', change: 'First issue.' }],
    energyControl: { use: 'Tests.', isolation: 'None.', locks: 'None.', verification: 'None.' },
    phases: [{ id: 'work', title: 'Work' }],
    start: 'plain',
    safe: ['safe'],
    steps: {
      plain: {
        kind: 'instruction',
        phase: 'work',
        title: 'Get ready for {tag}',
        why: 'With flow the plug force would shift one end.',
        do: ['Read the manual.'],
        makeSafe: 'safe',
        next: { to: 'safe' },
      },
      twoGauges: {
        ...read,
        title: 'Read both gauges',
        asks: [
          { ...onSignal, name: 'rigGaugePa', label: 'Signal gauge' },
          {
            name: 'rigCheckPa',
            label: 'Second gauge',
            type: 'quantity',
            dimension: 'pressure',
            gauge: 'checkGauge',
          },
        ],
        ways: kept,
      },
      bleeds: {
        ...read,
        title: 'Watch the gauge',
        asks: [yesNo('bleeds', 'The gauge follows the regulator down to zero')],
        ways: kept,
      },
      fourLooks: {
        ...read,
        title: 'Look at four things',
        asks: [
          yesNo('nuts', 'Lock nuts tight'),
          yesNo('right', 'Indicator stands right'),
          yesNo('bolts', 'Every bolt in'),
          yesNo('clear', 'People clear'),
        ],
        ways: kept,
      },
      consent: {
        ...read,
        title: 'Ask the operator',
        asks: [
          { name: 'operator', label: 'Name the operator by role', type: 'text' },
          yesNo('consentGiven', 'The operator gives the valve, and the permit is in hand'),
        ],
        ways: kept,
      },
      bypass: {
        ...read,
        title: 'Look at the bypass',
        asks: [
          { name: 'bypassTag', label: 'Tag on the bypass valve', type: 'text', mustBe: 'bypassPoint' },
          yesNo('processHeld', 'The operator holds the process value'),
        ],
        ways: kept,
      },
      inlet: {
        ...read,
        title: 'Lock the inlet',
        asks: [
          {
            name: 'inletBeforePa',
            label: 'Gauge, while it is alive',
            type: 'quantity',
            dimension: 'pressure',
            gauge: 'inletGauge',
          },
          { name: 'inletTag', label: 'Tag on the valve', type: 'text', mustBe: 'inletPoint' },
          { name: 'inletLockNumber', label: 'Number of my lock', type: 'text' },
        ],
        ways: kept,
      },
      drain: {
        ...read,
        title: 'Read zero',
        asks: [
          {
            name: 'inletAfterPa',
            label: 'Same gauge, now',
            type: 'quantity',
            dimension: 'pressure',
            gauge: 'inletGauge',
            optional: true,
          },
          {
            name: 'method',
            label: 'Shown by',
            type: 'choice',
            choices: [
              { value: 'gauge', label: 'The gauge that I saw alive' },
              { value: 'vent', label: 'The vent, cracked and watched twice' },
            ],
          },
          flow('flowFirst', 'Vent, first look'),
          flow('flowAgain', 'Vent, second look'),
        ],
        ways: kept,
      },
      contact: {
        ...read,
        title: 'Find the contact',
        asks: [
          {
            name: 'moves',
            label: 'The stem',
            type: 'choice',
            choices: [
              { value: 'yes', label: 'Moves' },
              { value: 'no', label: 'Does not move up to the limit' },
            ],
          },
          { ...onSignal, name: 'contactLeavesPa', label: 'Leaves its seat at', optional: true },
          { ...onSignal, name: 'contactTouchesPa', label: 'Touches its seat at', optional: true },
        ],
        ways: kept,
      },
      cycle: {
        kind: 'table',
        phase: 'work',
        title: 'Read the stroke',
        rows: [0, 25, 50, 75, 100, 75, 50, 25, 0].map((percent, at) => ({
          percent,
          direction: at < 5 ? ('up' as const) : ('down' as const),
          cycle: 1,
        })),
        makeSafe: 'safe',
        judge: { rule: 'table' },
        ways: { 'more rows': { to: 'cycle' }, complete: { to: 'safe' }, 'above limit': { to: 'safe' } },
      },
      choose: {
        kind: 'question',
        phase: 'work',
        title: 'What this valve wants now',
        makeSafe: 'safe',
        choices: {
          setPlug: { label: 'Set the plug on its seat', to: 'safe' },
          adjuster: { label: 'Wind the spring adjuster', to: 'safe' },
          leave: { label: 'Leave it as found', to: 'safe' },
          leaveOutside: {
            label: 'Leave it as found though it is not inside',
            to: 'safe',
            reason: true,
          },
        },
      },
      stops: {
        kind: 'question',
        phase: 'work',
        title: 'The gauges do not agree',
        makeSafe: 'safe',
        choices: {
          again: { label: 'Read both again', to: 'twoGauges' },
          stop: { label: 'Stop, and open the job again with other gauges', to: 'safe' },
        },
      },
      held: {
        ...read,
        title: 'Hold the plug off its seat',
        asks: [
          { ...onSignal, name: 'heldPa', label: 'Signal now' },
          { ...onSignal, name: 'heldAgainPa', label: 'Signal a minute later' },
          {
            name: 'heldTravelM',
            label: 'Travel it stands at',
            type: 'quantity',
            dimension: 'travel',
            gauge: 'travelIndicator',
          },
        ],
        ways: kept,
      },
      turns: {
        ...read,
        title: 'Turn it',
        asks: [
          { name: 'turnsMade', label: 'Turns made', type: 'quantity', dimension: 'turns' },
          {
            name: 'lockNuts',
            label: 'Lock nuts tight',
            type: 'choice',
            choices: [{ value: 'yes', label: 'Yes' }],
          },
        ],
        ways: kept,
      },
      others: {
        ...read,
        title: 'Look for the rest',
        asks: [
          {
            name: 'temperature',
            label: 'Temperature: body, tracing, jacket',
            type: 'choice',
            choices: [
              { value: 'absent', label: 'Nothing of it here' },
              { value: 'safe', label: 'Made safe: safe' },
              { value: 'hot', label: 'Not safe' },
            ],
          },
          {
            name: 'bodyTemperatureK',
            label: 'Body temperature, where it was measured',
            type: 'quantity',
            dimension: 'temperature',
            optional: true,
          },
        ],
        ways: kept,
      },
      ...MORE_CARDS,
      wait: {
        kind: 'wait',
        phase: 'work',
        title: 'Watch it',
        waitS: 20,
        makeSafe: 'safe',
        next: { to: 'safe' },
      },
      hold: {
        kind: 'hold',
        phase: 'work',
        title: 'Before the work',
        point: 'hold',
        criterion: 'All is safe.',
        evidence: ['supplyAir'],
        allows: [],
        signed: { to: 'safe' },
        sentBack: { to: 'safe' },
        makeSafe: 'safe',
      },
      safe: {
        kind: 'question',
        phase: 'work',
        title: 'Stopped',
        makeSafe: 'safe',
        choices: { on: { label: 'Go on', to: 'plain' } },
      },
    },
  }),
);
