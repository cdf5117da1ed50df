/** A hold read out by radio: the code goes out and comes back, it is counted, and whoever was heard confirms it later. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isSameCode } from '../../../procedures/read-back.ts';
import { radioCode } from '../../../server/signing/radio-code.ts';
import { signingKind } from '../../../server/signing/signing-stream.ts';
import { newRequestId, PINS } from '../an-app.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { textOf } from '../pages/texts.ts';
import { jsonOf } from './at-hold.ts';

let at: AtCard;
beforeEach(async () => {
  at = await atCard('holdWork');
});
afterEach(() => at.close());

interface ReadOut {
  readonly place: number;
  readonly step: string;
  readonly shownDigest: string;
  readonly nonce: string;
  readonly code: string;
  readonly lines: readonly string[];
}
interface ToSign {
  readonly radio: readonly { job: string; about: number; nonce: string; mine: boolean; said: string }[];
  readonly counts: readonly { what: string; count: number }[];
}

const readOut = () =>
  jsonOf<ReadOut>(at.app, { path: `/jobs/${at.job.id}/radio`, as: at.technician.browser });
const toSign = () => jsonOf<ToSign>(at.app, { path: '/to-sign', as: at.supervisor.browser });

async function heard(of: Readonly<Record<string, string>>) {
  const { place, step, shownDigest, nonce, code } = await readOut();
  const fields = {
    requestId: newRequestId(),
    act: 'sign',
    way: 'radio',
    place: String(place),
    step,
    shownDigest,
    nonce,
  };
  const said = { signer: 's1', code, why: 'at another unit', pin: PINS.technician };
  return at.sendJson({ ...fields, ...said, ...of });
}

describe('a hold that is read out by radio', () => {
  test('is read out whole, with a code that belongs to these readings and to this call', async () => {
    const [first, second] = [await readOut(), await readOut()];
    expect(first.lines[0]).toMatch(/^Valve FV-214, job 1\. Hold 1 of 2: Before plug stem/);
    expect(first.lines.join(' ')).toMatch(
      /A, Supply air: Cock IA-214-1 shut, vented, lock 43, was 19, reads 0 psi/,
    );
    expect(first.lines.at(-1)).toBe('By radio it does not allow: wind the spring adjuster on held test air.');
    expect(first.code).toBe(radioCode({ nonce: first.nonce, digest: first.shownDigest }));
    expect(first.code).not.toBe(second.code);
  });

  test('shows the code for reading out, and not on the page where what came back is written', async () => {
    const as = at.technician.browser;
    const { nonce, shownDigest } = await readOut();
    const page = await (await at.app.get(`/jobs/${at.job.id}/radio?heard=${nonce}`, { as })).text();
    expect(page).toContain('name="code"');
    expect(page).not.toContain(radioCode({ nonce, digest: shownDigest }));
    expect(textOf(await (await at.app.get(`/jobs/${at.job.id}/radio`, { as })).text())).toMatch(
      /The code [0-9A-Z]{3}-[0-9A-Z]{3}/,
    );
  });

  test('is signed only with the code that came back and the own PIN of whoever heard it', async () => {
    expect((await heard({ code: 'AAA-AAA' })).problem.code).toBe('HLD-017');
    expect((await heard({ pin: PINS.supervisor })).problem.code).toBe('PPL-001');
    expect((await heard({ why: '' })).problem.code).toBe('HLD-008');
    expect((await heard({ signer: 't1' })).problem.code).toBe('FRM-002');
    expect((await heard({ signer: 'e1' })).problem.code).toBe('HLD-001');
    expect((await at.job.job()).holds).toEqual([]);
    expect((await heard({})).status).toBe(200);
    expect((await at.job.job()).holds).toMatchObject([{ person: 's1', way: 'radio' }]);
  });

  test('is counted, stands open for the one who was heard, and is confirmed with the code from their paper', async () => {
    const { code } = await readOut();
    expect(code).toMatch(/^[0-9A-Z]{3}-[0-9A-Z]{3}$/);
    await heard({});
    const { radio, counts } = await toSign();
    expect(radio).toMatchObject([{ job: at.job.id, mine: true }]);
    expect(counts.find(({ what }) => what === 'signed by radio')?.count).toBe(1);
    const said = (await at.job.job()).signing.radio[0]?.code ?? '';
    const [open] = radio;
    const confirm = async (typed: string) => {
      const [now] = (await toSign()).radio;
      return at.app.postJson(
        `/to-sign/${at.job.id}`,
        {
          requestId: newRequestId(),
          act: 'confirm-radio',
          place: '0',
          about: String(open?.about),
          nonce: now?.nonce ?? '',
          signer: 's1',
          pin: PINS.supervisor,
          code: typed,
        },
        { as: at.supervisor.browser },
      );
    };
    expect((await confirm('AAA-AAA')).status).toBe(422);
    expect((await confirm(said.toLowerCase().replace('-', ' '))).status).toBe(200);
    expect((await toSign()).radio).toEqual([]);
    expect((await at.app.services.log.state(signingKind)).radio).toEqual([]);
    const record = await at.app.get(`/jobs/${at.job.id}/record`, { as: at.technician.browser });
    expect(textOf(await record.text())).toContain(
      `Heard by T1, code ${said} read back, confirmed with the code by the one who was heard`,
    );
  });

  test('is denied by the one who was not heard: what it allowed ends', async () => {
    await heard({});
    const [open] = (await toSign()).radio;
    const deny = {
      requestId: newRequestId(),
      act: 'deny-radio',
      place: '0',
      about: String(open?.about),
      nonce: open?.nonce ?? '',
      signer: 's1',
      pin: PINS.supervisor,
    };
    const answer = await at.app.post(`/to-sign/${at.job.id}`, deny, { as: at.supervisor.browser });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/to-sign']);
    expect((await at.job.job()).envelope).toBeNull();
    const { counts } = await toSign();
    expect(counts.find(({ what }) => what === 'signed by radio and denied')?.count).toBe(1);
  });
});

test('A code is heard as people say it: case, blanks and letters that sound like a digit do not count', () => {
  expect(isSameCode('k7q 49x', 'K7Q-49X')).toBe(true);
  expect(isSameCode('K7O491', 'K70-49I')).toBe(true);
  expect(isSameCode('K7Q-49Y', 'K7Q-49X')).toBe(false);
  expect(isSameCode('', 'K7Q-49X')).toBe(false);
});
