/** What the page of one calculation is drawn from. */
import { isDeepStrictEqual } from 'node:util';
import type { Calculation } from '../../procedures/calculations/calculation-types.ts';
import type { PageView } from '../http/route.ts';
import type { Asked } from './ask.ts';
import { cautionsOf } from './cautions.ts';
import { pictureOf } from './pictures.ts';
import { readInputs } from './read-inputs.ts';
import { type ResultTable, resultLines, resultTables, takenLines } from './result-words.ts';
import {
  ADDRESS_LETTERS_MAX,
  addressInOtherUnits,
  addressOf,
  fieldViews,
  pathOfCalculation,
  sourceViews,
} from './view.ts';
import type { WorkedOut } from './work-out.ts';

export interface Drawn {
  readonly calculation: Calculation;
  readonly asked: Asked;
  /** Null as long as something is missing or wrong. */
  readonly worked: WorkedOut | null;
}

export function calculationPage({ calculation, asked, worked }: Drawn): PageView {
  const { id, title, topic, equation, validity, inputs } = calculation;
  const form = {
    action: pathOfCalculation(id),
    posts: hasTable(calculation),
    units: asked.units,
    valve: asked.valve,
    fields: fieldViews(calculation, asked),
    /** Where what is wrong with a field is said, for the piece that a script fetches. */
    errorPlaces: ['valve', ...Object.keys(inputs)].map((name) => `#${name}-error`).join(','),
  };
  const behind = { equation, validity, sources: sourceViews(calculation) };
  const links = {
    address: shortAddress(calculation, asked),
    otherUnits: addressInOtherUnits(calculation, asked),
  };
  return {
    title: 'Calculations',
    template: 'pages/calculation.njk',
    params: {
      id,
      title,
      subject: topic,
      form,
      behind,
      links,
      outcome: outcomeOf({ calculation, asked, worked }),
    },
  };
}

function outcomeOf({ calculation, asked, worked }: Drawn) {
  const nothing = {
    worked: false,
    answers: [],
    taken: [],
    working: [],
    cautions: [],
    tables: [],
    picture: null,
  };
  if (worked === null) return { ...nothing, missing: missingOf(calculation, asked) };
  const lines = resultLines(calculation, worked.result);
  return {
    worked: true,
    answers: lines.filter((line) => line.asked),
    cautions: cautionsOf(calculation, worked.result),
    taken: takenLines(calculation, worked.values),
    working: lines.filter((line) => !line.asked),
    tables: resultTables(calculation, worked.result).flatMap(inBothUnits),
    picture: pictureOf({ ...worked, calculation, units: asked.units }),
    missing: [],
  };
}

/** A table whose cells say the same in both stands once. */
function inBothUnits({ title, columns, si, us }: ResultTable) {
  if (isDeepStrictEqual(si, us)) return [{ title, columns, rows: si }];
  return [
    { title: `${title}, SI`, columns, rows: si },
    { title: `${title}, US`, columns, rows: us },
  ];
}

function missingOf(calculation: Calculation, { texts, units }: Asked) {
  return readInputs(calculation, { texts, units }).missing.map((name) => ({
    href: `#${name}`,
    text: calculation.inputs[name]?.title ?? name,
  }));
}

/** A table is longer than an address should be: such a question is posted. */
export function hasTable({ inputs }: Calculation): boolean {
  return Object.values(inputs).some(({ kind }) => kind === 'rows');
}

/** Blank where the question is too long for an address. */
export function shortAddress(calculation: Calculation, asked: Asked): string {
  const address = addressOf(calculation, asked);
  return address.length > ADDRESS_LETTERS_MAX ? '' : address;
}
