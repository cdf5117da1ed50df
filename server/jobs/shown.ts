import type { ReadIn } from '../../procedures/actions/action.ts';
import type { Compiled } from '../../procedures/compile.ts';
import { shownToSigner } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { fill } from '../../procedures/say.ts';
import { ACTION_CLASSES } from '../../safety/action-classes.ts';
import { LANGUAGES, type Language } from '../../views/language/language.ts';
import { isProcedureSaid } from '../../views/language/said-procedures.ts';
import { textIn } from '../../views/language/speak.ts';
import { canonical } from '../log/canonical.ts';
import { sha256 } from '../log/chain.ts';

/** Digest of exactly what a signer is shown; the signed line keeps both. Blank where no hold is open. */
export function shownDigest(
  job: Job,
  { definition, readIn }: Pick<Compiled, 'definition'> & { readonly readIn?: ReadIn | undefined },
): string {
  const shown = shownToSigner(job, { definition, readIn });
  return shown === null ? '' : digestOfShown(shown);
}

/** The words of the open hold in another language; nothing where it is shown in English. */
export function readInOf(
  job: Job,
  { definition, language }: Pick<Compiled, 'definition'> & { readonly language: Language },
): ReadIn | undefined {
  const step = definition.steps[job.step];
  const say = textIn(language);
  if (step?.kind !== 'hold' || language === 'en' || !isProcedureSaid(job.procedure, language))
    return undefined;
  const work = step.allows.map((action) => ACTION_CLASSES[action].name);
  const texts = [fill(step.title, job), fill(step.how ?? '', job), fill(step.criterion, job), ...work];
  return { language, lines: texts.filter((text) => text !== '').map(say) };
}

/** In which language a page was, by the digest that came back with its form; nothing for English or for none of them. */
export function readInBy(
  digest: string,
  { job, definition }: Pick<Compiled, 'definition'> & { readonly job: Job },
): ReadIn | undefined {
  return (Object.keys(LANGUAGES) as Language[])
    .map((language) => readInOf(job, { definition, language }))
    .find((readIn) => readIn !== undefined && shownDigest(job, { definition, readIn }) === digest);
}

export function digestOfShown(shown: Json): string {
  return sha256(canonical(shown));
}
