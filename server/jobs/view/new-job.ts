import { say } from '../../../procedures/say.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import { GEAR_KINDS, type GearItem } from '../../../procedures/test-gear/gear.ts';
import { GEAR_ROLES, type GearRole, rolesFor } from '../../../procedures/test-gear/roles.ts';
import { wantedOf } from '../../../procedures/test-gear/wanted.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import type { Gear } from '../../gear/gear-stream.ts';
import { placeWord, plansOf } from '../../plans/planned.ts';
import type { Services } from '../../services.ts';
import { noSuchValve } from '../../valves/valve-refusals.ts';
import { valveKind } from '../../valves/valve-stream.ts';
import type { Catalogue, Offer } from '../catalogue.ts';
import { leftBehind } from '../left-behind.ts';
import { gearOptions } from './gear-options.ts';
import { sameGear } from './same-gear.ts';

export interface NewJobAsked {
  /** Id of who asks; null where nobody is signed in. */
  readonly person: string | null;
  readonly tag: string;
  readonly procedure: string;
  readonly place: string;
  /** What was chosen before, where the form is drawn again. */
  readonly typed: Readonly<Record<string, string | readonly string[]>>;
}

const GEAR_MAX = 1000;
/** Fields that carry the card of the job before through the form. */
const GOES_ON = ['from', 'fromPlace', 'fromStep', 'fromChoice', 'fromReason'] as const;

/** The page on which a job is opened: what the valve offers, and which gear in use is fit for it. @throws Refusal VAL-001 */
export async function newJobParams(
  { services, catalogue }: { readonly services: Services; readonly catalogue: Catalogue },
  { person, tag, procedure, place, typed }: NewJobAsked,
) {
  const { sheet } = await services.log.state(valveKind, tag);
  if (sheet === null) throw noSuchValve(tag);
  const offers = catalogue.offers(sheet).map(({ id, ...offer }) => ({
    procedure: id,
    ...offer,
    where: offer.place === 'bench' ? 'on the bench' : 'in the line',
  }));
  const chosen = offers.find(
    (offer) => offer.procedure === procedure && offer.place === place && offer.because === null,
  );
  const served = catalogue.current(procedure)?.procedure ?? { gear: [] };
  const roles = chosen === undefined ? [] : rolesFor(served, chosen.place);
  const inUse = roles.length === 0 ? [] : await gearInUse(services);
  const today = services.now().toISOString().slice(0, 10);
  return {
    tag,
    left: await leftBehind(tag, services),
    offers,
    groups: groupsOf(offers.filter((offer) => offer.because === null && offer !== chosen)),
    whyNot: offers.find((offer) => offer.procedure === procedure && offer.place === place)?.because ?? '',
    roles: roles.map((role) => ({
      name: role,
      label: GEAR_ROLES[role].label,
      help: reachWords(role, sheet),
      options: [
        { value: '', label: 'choose' },
        ...gearOptions(role, { inUse, sheet, today, chosen: typed[role] }),
      ],
    })),
    same: await sameParams(
      services,
      { person, roles, inUse, sheet, today },
      { tag, procedure, place, typed },
    ),
    ...(await planParams({ services, tag, chosen, typed: typed.plan })),
    goesOn: Object.fromEntries(
      GOES_ON.flatMap((name) => (typeof typed[name] === 'string' ? [[name, typed[name]] as const] : [])),
    ),
    chosen: chosen ?? { procedure: '', place: '' as Offer['place'] | '', title: '', where: '' },
  };
}

/** The gear of the last job, each with what it is there for, and the address at which it stands chosen. */
async function sameParams(
  services: Services,
  asked: Omit<Parameters<typeof sameGear>[1], 'person'> & { readonly person: string | null },
  { tag, procedure, place, typed }: Omit<NewJobAsked, 'person'>,
) {
  const { person, ...rest } = asked;
  const same =
    person === null || rest.roles.length === 0 ? null : await sameGear(services, { person, ...rest });
  if (same === null) return null;
  const kept = Object.entries(typed).flatMap(([name, value]) =>
    [...GOES_ON, 'plan'].includes(name) && typeof value === 'string' ? [[name, value] as const] : [],
  );
  const query = new URLSearchParams({ tag, procedure, place, ...Object.fromEntries(kept), ...same.numbers });
  return {
    job: same.job,
    tag: same.tag,
    href: `/jobs/new?${query}#gear`,
    pieces: Object.values(same.numbers).join(', '),
    isAll: Object.keys(same.numbers).length === asked.roles.length,
    isChosen: Object.entries(same.numbers).every(([role, number]) => typed[role] === number),
  };
}

type Offered = Omit<Offer, 'id'> & { readonly procedure: string; readonly where: string };

/** What brings somebody to a valve most pressingly stands first. */
const GROUPS: readonly { readonly folder: Offer['folder']; readonly title: string }[] = [
  { folder: 'troubleshooting', title: 'Something is wrong with it' },
  { folder: 'commissioning', title: 'Set and check' },
  { folder: 'overhaul', title: 'Mend and renew' },
];

/** Each procedure once, with where it may be done, under what it is for. */
function groupsOf(offers: readonly Offered[]) {
  return GROUPS.map(({ folder, title }) => {
    const there = offers.filter((offer) => offer.folder === folder);
    const procedures = [...new Set(there.map(({ procedure }) => procedure))].map((procedure) => {
      const ways = there.filter((offer) => offer.procedure === procedure);
      return { procedure, title: ways[0]?.title ?? '', ways };
    });
    return { title, procedures };
  }).filter(({ procedures }) => procedures.length > 0);
}

/** What is planned for the valve, and which of it this job would be. */
async function planParams({
  services,
  tag,
  chosen,
  typed,
}: {
  readonly services: Services;
  readonly tag: string;
  readonly chosen: { readonly procedure: string; readonly place: string } | undefined;
  readonly typed: string | readonly string[] | undefined;
}) {
  const plans = (await plansOf(services, tag)).map(({ plan }) => plan);
  const fitting = plans.filter(
    ({ procedure, place }) => procedure === chosen?.procedure && place === chosen.place,
  );
  const taken = fitting.find(({ number }) => number === typed) ?? fitting[0];
  return {
    plans: plans.map(({ number, procedure, place, dueOn, note }) => ({
      number,
      href: `/jobs/new?${new URLSearchParams({ tag, procedure, place, plan: number })}`,
      says: `${procedureNamed(procedure)?.definition.title ?? procedure}, ${placeWord(place)}, by ${dueOn}`,
      note,
    })),
    isFromPlan: taken !== undefined && taken.number === typed,
    plan: taken === undefined ? null : { number: taken.number, dueOn: taken.dueOn, note: taken.note },
  };
}

/** @example reachWords('signalGauge', sheet) // 'It has to show up to 20.00 psi.' */
function reachWords(role: GearRole, sheet: ValveSheet): string {
  const { kind, highSi } = wantedOf(role, sheet);
  const most = say({ valueSi: highSi, dimension: GEAR_KINDS[kind], units: sheet.units });
  return `It has to ${kind === 'regulator' ? 'give' : 'show'} up to ${most}.`;
}

async function gearInUse({ log }: Services): Promise<readonly GearItem[]> {
  const lines = await log.summaries('gear', { limit: GEAR_MAX });
  return lines
    .map((line) => line.body as unknown as Gear)
    .flatMap(({ item, retired }) => (item === null || retired ? [] : [item]));
}
