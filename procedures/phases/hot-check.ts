import type { ChoiceField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own = 'hotCheck' | 'hotGland' | 'hotJoint' | 'hotMoves' | 'handGland';

const phase = 'hot';

function dry(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'dry', label: 'Dry' },
      { value: 'weeps', label: 'It weeps or leaks' },
    ],
  };
}

/** Gland and bonnet once more on the next shift, hot and at pressure: new packing and a new gasket settle. */
export function hotCheck<const Next extends string>({
  done,
}: {
  readonly done: Next;
}): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...looked(done), ...findings(done) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function looked<const Next extends string>(done: Next): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    hotCheck: {
      kind: 'reading',
      phase,
      title: 'On the next shift: look at gland and bonnet of {tag}, hot and at pressure',
      how: 'Park the job until then. Hands off: stand aside, look with a light.',
      why: 'Packing and gasket settle with the first heat. What was tight cold may weep hot.',
      asks: [
        { name: 'hotAt', label: 'Hot and at pressure since, by the operator', type: 'text' },
        dry('glandHot', 'At the gland'),
        dry('jointHot', 'At the bonnet joint'),
        yesNo('movesHot', 'The operator says that it follows without sticking'),
      ],
      judge: { rule: 'hotCheck' },
      ways: {
        dry: { to: done },
        'gland weeps': { to: 'hotGland' },
        'joint weeps': { to: 'hotJoint' },
        sticks: { to: 'hotMoves' },
      },
      makeSafe: done,
    },
  };
}

function findings<const Next extends string>(done: Next): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const makeSafe = done;
  return {
    hotGland: {
      kind: 'question',
      phase,
      title: 'The gland weeps hot',
      how: 'New packing wants a little more load after its first heat: as the job on the live gland says, never by the way.',
      choices: {
        tighten: { label: 'Go on as the live gland job', to: 'handGland', sets: { workSignOff: 'none' } },
        leave: { label: 'Leave it so for now', to: done, reason: true },
      },
      makeSafe,
    },
    hotJoint: {
      kind: 'question',
      phase,
      title: 'The bonnet joint weeps hot',
      how: 'Stand aside. Bonnet nuts are not turned under pressure by this procedure: the site has its own rule and its own permit for that.',
      choices: {
        told: {
          label: 'Operations told; the joint is done again, isolated',
          to: done,
          reason: true,
          comesNext: 'seat-and-plug',
        },
        again: { label: 'It came from above: look again', to: 'hotCheck' },
      },
      makeSafe,
    },
    hotMoves: {
      kind: 'question',
      phase,
      title: 'It sticks hot',
      how: 'Packing swells with heat. Nothing is loosened while the line is live.',
      choices: {
        told: {
          label: 'Operations told; its friction is read in the next job',
          to: done,
          reason: true,
          comesNext: 'stroke-check',
        },
        again: { label: 'It moves by now: look again', to: 'hotCheck' },
      },
      makeSafe,
    },
    handGland: {
      kind: 'end',
      phase,
      title: 'It goes on as the live gland job',
      closes: 'handed over',
      handsOver: { procedure: 'live-gland', as: 'hot' },
    },
  };
}
