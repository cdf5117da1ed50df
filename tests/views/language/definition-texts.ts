import type { Definition } from '../../../procedures/vocabulary.ts';

/** Members whose text is a name, a rule or a note for reviewers, not for a screen. */
const UNSAID = new Set(['revisions', 'evidence', 'allows', 'with', 'id', 'rule', 'sets', 'to', 'by']);

/** Every text of a definition that somebody reads. */
export function textsOfDefinition(definition: Definition): readonly string[] {
  const found = new Set<string>();
  const walk = (value: unknown): void => {
    if (typeof value === 'string') {
      if (/ \p{L}|^\p{Lu}\p{Ll}+$/u.test(value)) found.add(value);
    } else if (Array.isArray(value)) value.forEach(walk);
    else if (typeof value === 'object' && value !== null) {
      for (const [name, one] of Object.entries(value)) if (!UNSAID.has(name)) walk(one);
    }
  };
  walk(definition);
  return [...found];
}
