/** What a calculation takes and answers, as schemas made of its registry entry: they read, and they are the description. */
import { z } from 'zod';
import type {
  Calculation,
  CellInput,
  InputSpec,
  OutputSpec,
} from '../../procedures/calculations/calculation-types.ts';
import { unitOfName } from '../../procedures/calculations/checks.ts';
import { DIMENSIONS } from '../../procedures/calculations/unit-table.ts';
import { unitFor } from '../../procedures/calculations/units.ts';
import { optionalText } from '../http/fields.ts';
import { choiceWords, isAbsolute } from './input-text.ts';
import { mayBeBlank } from './read-inputs.ts';

/** Tables are pasted whole. */
const TABLE_LETTERS_MAX = 200_000;

const UNIT_SYSTEMS = ['us', 'si'] as const;

const aside = {
  units: z
    .enum(UNIT_SYSTEMS, 'Write us or si.')
    .optional()
    .describe('Which units a number without a unit is in; left out: those of the valve, or us.'),
  valve: optionalText({ called: 'the tag of a valve' })
    .optional()
    .describe('Tag of a valve: what is not given is taken from its sheet.'),
};

/** Texts by name of the input, with the two that every calculation takes. */
export function textsSchema({ inputs }: Pick<Calculation, 'inputs'>) {
  const own = Object.entries(inputs).map(([name, spec]) => [
    name,
    optionalText({
      called: spec.title,
      ...(spec.kind === 'rows' ? { max: TABLE_LETTERS_MAX, lines: true } : {}),
    })
      .optional()
      .describe(describeInput(name, spec)),
  ]);
  const fields = { ...Object.fromEntries(own), ...aside } as typeof aside & Record<string, TextField>;
  return z.strictObject(fields, { error: unknownField });
}

function unknownField(issue: {
  readonly code?: string;
  readonly keys?: readonly string[];
}): string | undefined {
  return issue.code === 'unrecognized_keys' ? `There is no field ${issue.keys?.join(', ')} here.` : undefined;
}

type TextField = z.ZodOptional<ReturnType<typeof optionalText>>;

function describeInput(name: string, spec: InputSpec): string {
  const blank = spec.kind === 'number' && spec.usual !== undefined ? `; blank: ${spec.usual} in SI` : '';
  const optional = mayBeBlank(spec) && blank === '' ? '; may be blank' : '';
  return `${spec.title}: ${shapeOf(name, spec)}${blank}${optional}.`;
}

function shapeOf(name: string, spec: InputSpec): string {
  if (spec.kind !== 'rows') return cellShape(name, spec);
  const columns = Object.entries(spec.columns).map(
    ([column, cell]) => `${cell.title} (${cellShape(column, cell)})`,
  );
  return `a table, a line each: ${columns.join(', ')}`;
}

/** What may stand in one field or cell. @example cellShape('travelM', spec) // 'mm or in' */
export function cellShape(name: string, spec: CellInput): string {
  if (spec.kind === 'choice') return `one of ${spec.choices.map(choiceWords).join(', ')}`;
  if (spec.kind === 'yes-no') return 'yes or no';
  if (spec.kind === 'text') return 'a text';
  const { si, us } = DIMENSIONS[spec.dimension];
  const units = [...new Set([unitFor(si).label, unitFor(us).label])].filter((label) => label !== '');
  const absolute = isAbsolute(name) ? ', absolute' : '';
  return units.length === 0 ? 'a number' : `${units.join(' or ')}${absolute}`;
}

/** The results by name, in SI. */
function resultsSchema({ outputs }: Pick<Calculation, 'outputs'>) {
  return z.object(
    Object.fromEntries(Object.entries(outputs).map(([name, spec]) => [name, outputSchema(name, spec)])),
  );
}

function outputSchema(name: string, spec: OutputSpec): z.ZodType {
  const unit = unitOfName(name);
  const called = unit === '' ? spec.title : `${spec.title}, in ${unit}`;
  return kindSchema(spec).nullable().describe(called);
}

function kindSchema(spec: OutputSpec): z.ZodType {
  switch (spec.kind) {
    case 'number':
      return z.number();
    case 'word':
      return z.string();
    case 'yes-no':
      return z.boolean();
    case 'list':
      return z.array(z.union([z.string(), z.number()]));
    case 'rows':
      return z.array(
        z.object(
          Object.fromEntries(
            Object.entries(spec.columns ?? {}).map(([name, column]) => [name, outputSchema(name, column)]),
          ),
        ),
      );
  }
}

const sourceAnswer = z.object({
  id: z.string(),
  title: z.string(),
  kind: z.string().describe('published, derived, memory: what stands behind it'),
  note: z.string(),
});

/** The answer of one calculation. */
export function answerSchema(calculation: Calculation) {
  return z.object({
    calculation: z.string(),
    title: z.string(),
    equation: z.string(),
    validity: z.string(),
    sources: z.array(sourceAnswer),
    units: z.enum(UNIT_SYSTEMS),
    valve: z.string().nullable().describe('The valve whose sheet was asked'),
    inputs: z
      .record(z.string(), z.object({ typed: z.string(), fromSheet: z.boolean() }))
      .describe('As taken, by name'),
    missing: z.array(z.string()).describe('Names of what is still to be given'),
    results: resultsSchema(calculation)
      .nullable()
      .describe('In SI under their names; null as long as nothing was given'),
    shown: z.array(
      z.object({
        name: z.string(),
        title: z.string(),
        si: z.string(),
        us: z.string(),
        asked: z.boolean().describe('false: the working'),
      }),
    ),
  });
}
