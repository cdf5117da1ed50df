import { boltCircle as placesOf } from '../../../../procedures/calculations/bolting.ts';
import type { Job } from '../../../../procedures/job.ts';
import { crossOrder } from '../../../../procedures/overhaul-figures.ts';
import type { OpenStep, PictureName } from '../../../../procedures/vocabulary.ts';
import { boltCircle } from '../../../../views/pictures/bolt-circle.ts';
import { FLAPPER_SENTENCE, flapper } from '../../../../views/pictures/flapper.ts';
import { RELAY_SENTENCE, relay } from '../../../../views/pictures/relay.ts';

const DRAWN: Readonly<Record<PictureName, (job: Job) => string>> = {
  relay: () => relay({ sentence: RELAY_SENTENCE }),
  flapper: () => flapper({ sentence: FLAPPER_SENTENCE }),
  tieRods,
};

/** Nothing is drawn where the rods were not counted, or not in pairs. */
function tieRods(job: Job): string {
  const bolts = Number(job.words.tieRods);
  return Number.isInteger(bolts) && bolts >= 4 && bolts % 2 === 0 ? tieRodsDrawn(bolts) : '';
}

function tieRodsDrawn(bolts: number): string {
  const places = placesOf({ bolts, circleDiameterM: 1 });
  return boltCircle({
    bolts: places.map(({ bolt, rank, rightM, upM }) => ({ bolt, rank, right: rightM, up: upM })),
    sentence: `${bolts} tie rods from above, counted clockwise from the top. Tighten them in this order: ${crossOrder(String(bolts))}.`,
  });
}

/** The drawing of a card, as SVG; blank where it has none. */
export function pictureOf({ picture }: Pick<OpenStep, 'picture'>, job: Job): string {
  return picture === undefined ? '' : DRAWN[picture](job);
}

/** A drawing with the words under it. */
export interface Drawn {
  readonly svg: string;
  readonly caption: string;
}

/** Numbers of tie rods that the card asks for by name; others are tightened in opposite pairs. */
const ROD_COUNTS = [4, 6, 8, 12] as const;

/** On paper nothing has been counted yet: every order that the card may want is drawn. */
export function picturesOnPaper({ picture }: Pick<OpenStep, 'picture'>, job: Job): readonly Drawn[] {
  if (picture === undefined) return [];
  if (picture !== 'tieRods') return [{ svg: DRAWN[picture](job), caption: '' }];
  return ROD_COUNTS.map((bolts) => ({
    svg: tieRodsDrawn(bolts),
    caption: `${bolts} rods: ${crossOrder(String(bolts))}`,
  }));
}
