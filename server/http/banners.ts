import { LogDamaged } from '../log/chain.ts';
import { isReviewer } from '../people/review.ts';
import { absenceKind } from '../points/absence-stream.ts';
import { shownTime } from '../shown-time.ts';
import { type LetIn, type PinAlarm, type Site, siteKind } from '../site-stream.ts';
import type { BareCall } from './route.ts';

/** What stands above every page until it is over, whoever opens it. */
export interface Banner {
  readonly text: string;
  /** Where more about it stands; blank for nowhere. */
  readonly href: string;
  readonly link: string;
}

/** So long everybody reads that somebody was let in from the server's own console. */
const LET_IN_SHOWN_MS = 7 * 24 * 3600 * 1000;

type Asking = Pick<BareCall, 'services' | 'person' | 'now'>;

export async function bannersFor(asking: Asking): Promise<readonly Banner[]> {
  const { services, person } = asking;
  const plain = [...(services.settings.isOpenHttp ? [OPEN_HTTP] : []), ...anchorBanners(asking)];
  if (person === null) return plain;
  const site = await siteOf(asking);
  if (site === null) return [...plain, DAMAGED];
  const alarms = site.alarms.filter((alarm) => isReviewer(person.role) || alarm.person === person.id);
  return [
    ...plain,
    ...(await removalBanners(person.id, asking)),
    ...((await services.drafts.of(person.id)).length > 0 ? [UNSENT] : []),
    ...(await Promise.all(letInsShown(site, asking).map((one) => letInBanner(one, asking)))),
    ...(await Promise.all(alarms.map((one) => alarmBanner(one, asking)))),
  ];
}

const OPEN_HTTP: Banner = {
  text: 'No encryption: whoever is on this network can read PINs.',
  href: '/help',
  link: 'Help',
};

const UNSENT: Banner = {
  text: 'Something that you typed was not sent, because your sign-in had ended.',
  href: '/drafts',
  link: 'Look at it',
};

/** Whoever is there, signed in or not: nothing is written until two people have looked into it. */
function anchorBanners({ services: { checkpoints }, person }: Asking): readonly Banner[] {
  const link = mayReviewRole(person)
    ? { href: '/audit/log', link: 'Look into it' }
    : { href: '/help', link: 'Help' };
  if (checkpoints !== null && checkpoints.distrust !== null) {
    const text = `Read-only: the log is not the one that was here before. ${checkpoints.distrust.what} Make the work safe and stop.`;
    return [{ text, ...link }];
  }
  if (checkpoints?.failing !== true) return [];
  return [
    {
      text: 'The last checkpoint of the log could not be written: a later change of the log might not show.',
      ...link,
    },
  ];
}

function mayReviewRole(person: BareCall['person']): boolean {
  return person !== null && isReviewer(person.role);
}

const DAMAGED: Banner = {
  text: 'The log of the site was changed outside this program. Make the work safe and stop.',
  href: '/help',
  link: 'Help',
};

/** Whose lock was taken off while they were away reads it on every page until they say that they know. */
async function removalBanners(person: string, { services }: Asking): Promise<readonly Banner[]> {
  const { removals } = await services.log.state(absenceKind, person);
  return removals
    .filter(({ knownAt }) => knownAt === null)
    .map(({ at, job }) => ({
      text: `${shownTime(at)}: your locks for job ${job} were taken off while you were away.`,
      href: '/removals',
      link: 'Read why',
    }));
}

/** A page is shown all the same when the site's own stream was changed: the way to safe must stay open. */
async function siteOf({ services }: Asking): Promise<Site | null> {
  try {
    return await services.log.state(siteKind);
  } catch (error) {
    if (error instanceof LogDamaged) return null;
    throw error;
  }
}

function letInsShown({ letIns }: Site, { now }: Asking): readonly LetIn[] {
  return letIns.filter(({ at }) => now.getTime() - Date.parse(at) < LET_IN_SHOWN_MS);
}

async function letInBanner({ person, at, newKey }: LetIn, asking: Asking): Promise<Banner> {
  const who = await named(person, asking);
  const more = newKey ? ', and all PINs were voided' : '';
  return {
    text: `${shownTime(at)}: ${who} got a one-time code at the server’s own console${more}.`,
    ...(mayReview(asking) ? { href: '/people/review', link: 'Accounts' } : { href: '', link: '' }),
  };
}

async function alarmBanner({ person, inARow, screen, at }: PinAlarm, asking: Asking): Promise<Banner> {
  const whose = person === null ? 'names that nobody here has' : `the name of ${await named(person, asking)}`;
  const mayLook = mayReview(asking);
  return {
    text: `${shownTime(at)}: ${inARow} wrong PINs in ${whose}, at ${screen}.`,
    href: mayLook ? '/people/review' : '/help',
    link: mayLook ? 'Look into it' : 'Help',
  };
}

function mayReview({ person }: Asking): boolean {
  return mayReviewRole(person);
}

async function named(id: string, { services }: Asking): Promise<string> {
  const person = await services.people.find(id);
  return person === undefined ? id : `${person.name} (${id})`;
}
