import { ANY_HUB, type Check, IN_SERVICE } from '../check.ts';

/** Looked at from the control room: nothing is touched. Minutes and misread shares: judgement. */
export const controlRoomChecks = {
  controllerOutput: {
    title: 'Controller output against what the loop needs',
    todo: 'Read the output as the opening that it asks for: where air shuts the valve, a full output may mean shut.',
    minutes: 2,
    hubs: IN_SERVICE,
    misread: 0.03,
    outcomes: {
      'in line': 'Between 20 and 95 % and in line with the load',
      'near shut': 'In line, but always below a fifth: the valve works near its seat',
      'wound up': 'At its top: it asks for more opening',
      'wound down': 'At its bottom: it asks for less opening',
      swings: 'Swings by more than 3 %',
      frozen: 'Does not change though the process is off its set point',
    },
  },
  controllerMode: {
    title: 'Controller mode, tracking and input flag',
    todo: 'Read mode, tracking and the flag on the input. Where this job has put the loop in manual, the mode of before counts.',
    minutes: 2,
    hubs: ANY_HUB,
    misread: 0.02,
    outcomes: {
      automatic: 'Automatic, input good',
      held: 'Manual, tracking, or output held or limited',
      'bad input': 'Input flagged bad or out of range',
    },
  },
  trend: {
    title: 'Trend of set point, process and output over the last hours',
    todo: 'Look at the last hours: what shape, and since when.',
    minutes: 5,
    hubs: ANY_HUB,
    misread: 0.07,
    outcomes: {
      steady: 'Steady within its usual noise',
      offset: 'The process stays off its set point',
      'saw-tooth': 'Output goes in triangles, the process in steps, slowly',
      'fast swing': 'Process and output swing like a sine',
      'sudden change': 'All at once, at one time',
      sluggish: 'The process answers late and slowly',
    },
  },
  loopRecord: {
    title: 'A record of the loop as a table: does the valve stick?',
    todo: 'Bring a table of time, output and process value, of six half swings and more; with the position of the stem it tells more.',
    minutes: 6,
    hubs: ANY_HUB,
    // A record alone proves nothing: with this share no answer moves the odds of two causes by more than four to one.
    misread: 0.29,
    broughtOnly: true,
    seenFrom: { check: 'trend', words: { 'saw-tooth': 'sticks' }, shareMost: 0.37 },
    outcomes: {
      'no sign': 'Two methods agree: no sign of sticking',
      sticks: 'Two methods agree: the valve sticks',
    },
  },
  holdInManual: {
    title: 'Loop in manual and held: does the swing stop?',
    todo: 'With consent, put the loop in manual, hold the output, watch three periods.',
    minutes: 10,
    hubs: IN_SERVICE,
    consent: true,
    misread: 0.06,
    outcomes: {
      'no swing': 'There was no swing',
      stops: 'The swing dies out',
      'goes on': 'The swing goes on',
    },
  },
  secondMeasurement: {
    title: 'A second measurement of the process value',
    todo: 'Compare with a local gauge, a sight glass or a test gauge.',
    minutes: 8,
    hubs: IN_SERVICE,
    misread: 0.04,
    outcomes: { agrees: 'Agrees within 2 %', differs: 'Differs by more than 2 %' },
    measured: {
      axis: 'percent of span that the two are apart, whichever way',
      soundSigma: 0.5,
      soundAt: 0.7,
      anywhere: [0, 60],
      bands: { agrees: [-5, 2], differs: [2, 70] },
      typical: { differs: [2, 30] },
    },
  },
} as const satisfies Record<string, Check>;
