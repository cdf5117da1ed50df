import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { format, fromSi, preferredUnit, unitFor } from '../../../procedures/calculations/units.ts';
import type { Job } from '../../../procedures/job.ts';
import { uncertaintyOf } from '../../../procedures/readings/given.ts';
import { fill, sayFigure } from '../../../procedures/say.ts';
import { GEAR_ROLES, type GearRole } from '../../../procedures/test-gear/roles.ts';
import type { Caution, Definition } from '../../../procedures/vocabulary.ts';
import { nextProcedures } from '../next-procedures.ts';
import { noteLines, withNotes } from '../notes/lines.ts';
import { departuresOf } from '../view/departures.ts';
import { singleLines } from '../view/lines.ts';
import { asRead, clock, day, short } from '../view/words.ts';
import type { OfJob } from './holds.ts';
import type { JobRecord } from './schema.ts';

/** What comes before anything that a record says. */
export const LIMITS: readonly string[] = [
  'Local codes, the site’s permit and lockout system and the maker’s manual come first.',
  'These are readings of one day, not fitness for another service.',
  'A check made without flow says nothing of what process flow does to the stroke.',
];

/** @example aboutOf(job) // 'FV-214, condensate return, Unit 3, bay 3, in the line. Air moves the stem up, ...' */
export function aboutOf(job: Job): string {
  const { sheet } = job;
  const unit = (dimension: 'pressure' | 'area' | 'length') => preferredUnit(dimension, sheet.units);
  const of = (valueSi: number, dimension: 'pressure' | 'area' | 'length') =>
    `${bare(valueSi, unit(dimension))} ${unitFor(unit(dimension)).label}`;
  return [
    job.facts.place === 'bench'
      ? `${job.tag}, ${sheet.service}, ${sheet.location}, on the bench.`
      : `${job.tag}, ${sheet.service}, ${sheet.location}, in the line.`,
    `Air moves the stem ${sheet.airMovesStem}, the plug closes moving ${sheet.plugCloses}: ${sayFigure('airAction', job)}, ${sayFigure('failPosition', job)} on loss of air.`,
    sheet.springHeldBy === 'no spring'
      ? 'No spring: it has no bench set;'
      : `Bench set ${bare(sheet.benchSetLowPa, unit('pressure'))} to ${of(sheet.benchSetHighPa, 'pressure')},`,
    `area ${of(sheet.effectiveAreaM2, 'area')}, travel ${of(sheet.travelM, 'length')}.`,
    `Valve sheet, revision ${job.sheetRevision}.`,
    ...(job.goesOnFrom === null
      ? []
      : [`It went on from job ${job.goesOnFrom}, with isolation, locks and readings as they stood.`]),
  ].join(' ');
}

/** As the plate says it, without zeros behind. @example bare(20684271.88, 'psi') // '3000' */
function bare(valueSi: number, unit: UnitId): string {
  return String(Number(fromSi({ valueSi, unit }).toFixed(3)));
}

/** The gear that was chosen when the job opened, as it was then. */
export function gearOf(job: Job): JobRecord['gear'] {
  const until = job.closedAt === null ? '' : day(job.closedAt);
  return (Object.keys(GEAR_ROLES) as GearRole[]).flatMap((role) => {
    const item = job.gear[role];
    if (item === undefined) return [];
    const { unit } = item;
    const read = item.kind !== 'regulator';
    return [
      {
        number: item.number,
        role: GEAR_ROLES[role].label,
        range: `${bare(item.rangeLowSi, unit)} to ${bare(item.rangeHighSi, unit)} ${unitFor(unit).label}`,
        uncertainty: read ? format({ valueSi: uncertaintyOf(item), unit, decimals: 3 }) : 'not read',
        due: item.dueOn,
        certificate: item.certificate,
        late: until !== '' && item.dueOn < until,
      },
    ];
  });
}

export function departures({ job, compiled }: OfJob): JobRecord['departures'] {
  return departuresOf(job, compiled).map((one) => ({
    ...one,
    at: `${day(one.at)} ${clock(one.at)}`,
    person: short(one.person),
  }));
}

/** Each signal word that stood on a card of this job, once, with the lines that it stood before. */
export function cautionsOf({ job, compiled }: OfJob): JobRecord['cautions'] {
  const found = new Map<string, { readonly caution: Caution; readonly places: number[] }>();
  for (const answer of job.answers) {
    const step = compiled.definition.steps[answer.step];
    if (step === undefined || step.kind === 'end' || step.caution === undefined) continue;
    const key = JSON.stringify(step.caution);
    const places = found.get(key)?.places ?? [];
    found.set(key, { caution: step.caution, places: [...places, answer.place] });
  }
  return [...found.values()].map(({ caution, places }) => ({
    word: caution.word,
    hazard: fill(caution.hazard, job),
    consequence: fill(caution.consequence, job),
    avoid: fill(caution.avoid, job),
    stoodBefore: `stood before ${places.length === 1 ? 'line' : 'lines'} ${runs(places)}`,
  }));
}

/** @example runs([3, 4, 5, 9]) // '3 to 5, 9' */
export function runs(places: readonly number[]): string {
  const all: { first: number; last: number }[] = [];
  for (const place of places) {
    const open = all.at(-1);
    if (open !== undefined && place === open.last + 1) open.last = place;
    else all.push({ first: place, last: place });
  }
  return all.map(({ first, last }) => (first === last ? `${first}` : `${first} to ${last}`)).join(', ');
}

/** What was left for whoever comes to this valve next. */
export function nextOf(job: Job, definition: Definition): JobRecord['next'] {
  const { readings, words, sheet } = job;
  const thread = readings.exposedThreadLeftM ?? readings.exposedThreadM;
  const adjuster = readings.adjusterHeightLeftM ?? readings.adjusterHeightNowM ?? readings.adjusterHeightM;
  const rings = sheet.packingRings;
  const points = [sheet.supplyPoint, sheet.inletPoint, sheet.outletPoint, sheet.bypassPoint].filter(Boolean);
  const rows = [
    ['exposed stem thread', thread === undefined ? '' : asRead(thread)],
    ['adjuster height', adjuster === undefined ? '' : asRead(adjuster)],
    ['packing', rings === null ? '' : `${rings} rings by the sheet`],
    ['isolation points', points.join(', ')],
    ['notes of this job', words.nextNotes ?? ''],
    [
      'work that comes next',
      nextProcedures(job, definition)
        .map(({ title }) => title)
        .join(', '),
    ],
    ['notes of the sheet', sheet.notes],
  ] as const;
  return rows.filter(([, value]) => value !== '').map(([label, value]) => ({ label, value }));
}

/** Every line of the job, in order. What stands no more is struck, and can still be read. */
export function linesOf(
  { job, compiled }: OfJob,
  doubts: ReadonlyMap<number, readonly string[]>,
): JobRecord['lines'] {
  const struck = new Set([
    ...job.answers.filter((one) => one.superseded).map(({ place }) => place),
    ...job.notes.filter((one) => one.struck !== null).map(({ place }) => place),
  ]);
  return withNotes(singleLines(job, compiled), noteLines(job, compiled)).map((row) => ({
    place: row.place,
    what: row.what,
    reading: row.reading,
    verdict: row.verdict.word,
    who: row.who,
    when: row.when,
    struck: struck.has(row.place),
    doubt: (doubts.get(row.place) ?? []).join(', '),
  }));
}
