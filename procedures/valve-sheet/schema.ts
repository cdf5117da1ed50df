import { z } from 'zod';
import type { UnitSystem } from '../calculations/units.ts';
import type { SheetField } from './field.ts';
import { FIELDS } from './fields.ts';
import { unitOf } from './read-field.ts';
import { readSheet } from './read-sheet.ts';
import type { ValveSheet } from './sheet.ts';

/** Texts by field name, each described, so that the document of the interface tells what to send. */
export const sheetTexts = z.strictObject(
  Object.fromEntries(FIELDS.map((field) => [field.name, z.string().optional().describe(describe(field))])),
);

/**
 * Texts to a valve sheet, each wrong field named with the reason.
 *
 * @param typedIn  which units numbers without a unit are in; left out: those that the sheet asks for
 * @example sheetSchema().safeParse({ tag: 'FV-214', travelM: 'ten', ... }).error // issue at travelM: “ten” is not a number. ...
 */
export function sheetSchema(typedIn?: UnitSystem) {
  return sheetTexts.transform((texts, context): ValveSheet => {
    const given = Object.entries(texts).filter((pair): pair is [string, string] => pair[1] !== undefined);
    const read = readSheet({ texts: Object.fromEntries(given), typedIn });
    if (read.ok) return read.sheet;
    for (const [name, message] of Object.entries(read.faults)) {
      context.issues.push({ code: 'custom', path: [name], message, input: texts });
    }
    return z.NEVER;
  });
}

function describe(field: SheetField): string {
  return [field.label, shape(field), field.help ?? ''].filter((part) => part !== '').join('. ');
}

function shape(field: SheetField): string {
  switch (field.kind) {
    case 'quantity': {
      const units = [...new Set([unitOf(field, 'us'), unitOf(field, 'si')])].filter((unit) => unit !== '1');
      return units.length === 0 ? 'A number' : `A number, with its unit: ${units.join(' or ')}`;
    }
    case 'count':
      return `A whole number from 1 to ${field.atMost}`;
    case 'choice':
      return `One of: ${field.choices.map(({ value }) => value).join(', ')}`;
    case 'yes or no':
      return 'yes or no';
    case 'thread':
      return 'Size and pitch, as 1/2-20 or M12x1.25';
    default:
      return '';
  }
}
