import { afterEach, beforeEach, expect, test } from 'vitest';
import { digestOfShown } from '../../../server/jobs/shown.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { auditors } from '../../../server/streams.ts';
import { newRequestId } from '../an-app.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { signing } from './at-hold.ts';

let at: AtCard;
beforeEach(async () => {
  at = await atCard('holdWork');
});
afterEach(() => at.close());

interface SignedLine {
  readonly shown: {
    readonly criterion: string;
    readonly read?: { readonly language: string; readonly lines: string[] };
  };
}

async function choose(language: string): Promise<void> {
  await at.app.post('/language', { language }, { as: at.technician.browser });
}

async function signedLine() {
  const line = (await at.app.services.log.entriesOf(streamOf('job', at.job.id))).at(-1);
  if (line?.kind !== 'hold-signed') throw new Error(`the newest line is ${line?.kind}`);
  return {
    shown: (line.inputs as unknown as SignedLine).shown,
    digest: (line.effects as { shownDigest: string }).shownDigest,
  };
}

test('a hold that was read in Spanish is signed over its Spanish words, and the line keeps them', async () => {
  await choose('es');
  expect((await at.sendJson(await signing(at))).status).toBe(200);
  const { shown, digest } = await signedLine();
  expect(shown.read?.language).toBe('es');
  expect(shown.read?.lines[0]).toBe('Antes de girar el vástago del obturador o el ajustador');
  expect(shown.criterion).toMatch(/^Each energy is absent/);
  expect(digestOfShown(JSON.parse(JSON.stringify(shown)))).toBe(digest);
  const report = await verifyStore(at.app.services.store, auditors);
  expect([report.fault, report.problems]).toEqual([null, []]);
});

test('a hold that was read in English is signed as ever, and holds no other words', async () => {
  expect((await at.sendJson(await signing(at))).status).toBe(200);
  expect((await signedLine()).shown.read).toBeUndefined();
});

test('a page that was shown in one language is signed in it, whatever its reader chose meanwhile', async () => {
  await choose('es');
  const fields = await signing(at);
  await choose('en');
  expect((await at.sendJson(fields)).status).toBe(200);
  expect((await signedLine()).shown.read?.language).toBe('es');
});

test('the digest of one language does not fit the page of the other', async () => {
  const english = await signing(at);
  await choose('es');
  const spanish = await signing(at);
  expect(spanish.shownDigest).not.toBe(english.shownDigest);
  const mixed = { ...spanish, shownDigest: english.shownDigest ?? '', requestId: newRequestId() };
  const { status, problem } = await at.sendJson(mixed);
  expect([status, problem.code]).toEqual([409, 'HLD-016']);
});

test('a hold is read out by radio in Spanish, line by line, and signed by radio over its Spanish words', async () => {
  await choose('es');
  const page = await at.app.get(`/jobs/${at.job.id}/radio`, { as: at.technician.browser });
  const html = await page.text();
  for (const line of [
    'Punto de espera 1 de 2',
    'Aceptable cuando: Cada energía',
    'Permite, trabajo por hacer: conectar aire',
  ])
    expect(html).toContain(line);
  const english = [...html.matchAll(/<span lang="en">([^<]*)</g)].map(([, text]) => text);
  // How residue was cleared is in the words of whoever cleared it, and people have names of their own.
  expect(english.filter((text) => !/Residu|^technician/.test(text ?? ''))).toEqual([]);
});
