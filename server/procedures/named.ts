import { FIGURES, isFigureName } from '../../procedures/quantities.ts';

const PLACEHOLDER = /\{(\w+)\}/g;

/** A figure by its name, where no valve is there to have a number. @example named('Set {benchSetMid}.') // 'Set [middle of the bench set].' */
export function named(words: string): string {
  return words.replaceAll(PLACEHOLDER, (_, name: string) =>
    isFigureName(name) ? `[${FIGURES[name].label}]` : name,
  );
}
