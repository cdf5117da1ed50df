import { z } from 'zod';
import type { SheetField } from './field.ts';
import { FIELDS } from './fields.ts';
import { unitOf } from './read-field.ts';

/** Texts by field name, each described, so that the document of the interface tells what to send. */
export const sheetTexts = z.strictObject(
  Object.fromEntries(FIELDS.map((field) => [field.name, z.string().optional().describe(describe(field))])),
);

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
