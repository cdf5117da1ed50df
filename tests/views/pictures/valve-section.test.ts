import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { STROKE_U, seating, stemUpFraction, type ValveSection } from '../../../views/pictures/valve/model.ts';
import { coilPitch } from '../../../views/pictures/valve/spring.ts';
import { valveSection } from '../../../views/pictures/valve-section.ts';
import { attributeOf, readHtml, textOf } from '../html.ts';

const filling = fc.constantFrom('live', 'held', 'safe', 'absent');
const cock = fc.option(
  fc.record({ shut: fc.boolean(), lock: fc.constantFrom('14', '15') }, { requiredKeys: ['shut'] }),
);

const anyValve: fc.Arbitrary<ValveSection> = fc.record({
  id: fc.constant('valve'),
  sentence: fc.constant('FV-214 in section'),
  plugCloses: fc.constantFrom('down', 'up'),
  airMovesStem: fc.constantFrom('down', 'up'),
  flow: fc.constantFrom('under', 'over'),
  actuatorKind: fc.constantFrom('diaphragm', 'piston'),
  springHeldBy: fc.constantFrom('adjuster', 'case', 'no spring'),
  device: fc.constantFrom('', 'I/P', 'POS'),
  positioner: fc.boolean(),
  openFraction: fc.double({ min: 0, max: 1, noNaN: true }),
  supply: filling,
  signal: filling,
  spring: fc.constantFrom('loaded', 'contained', 'released', 'absent'),
  inlet: filling,
  outlet: filling,
  signalLine: fc.constantFrom('joined', 'capped', 'test gauge'),
  supplyCock: cock,
  inletCock: cock,
  outletCock: cock,
  inletDrain: cock,
  outletDrain: cock,
  bypass: cock,
  tags: fc.constant([
    { letter: 'A', name: 'Supply air', state: 'live', value: '62 psi', proof: 'G-03 <in> line' },
    { letter: 'F', name: 'Bypass', state: 'open', value: '117 gpm' },
  ] as const),
  words: fc.constant({ open: '100 open', shut: '0 shut', travel: 'travel', travelValue: '0.0 %' }),
});

function drawn(valve: ValveSection) {
  const { elements, faults } = readHtml(valveSection(valve));
  const byId = (name: string) => elements.find((element) => attributeOf(element, 'id') === `valve-${name}`);
  return { elements, faults, byId };
}

const sample = (changes: Partial<ValveSection>): ValveSection => {
  const [valve] = fc.sample(anyValve, { numRuns: 1, seed: 7 });
  if (!valve) throw new Error('no valve was made');
  return { ...valve, ...changes };
};

describe('the valve section', () => {
  test('is sound HTML without style attributes, for every valve', () => {
    fc.assert(
      fc.property(anyValve, (valve) => {
        expect(drawn(valve).faults).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test('has a role, a sentence and no number that is not a number', () => {
    fc.assert(
      fc.property(anyValve, (valve) => {
        const svg = valveSection(valve);
        expect(svg).not.toMatch(/NaN|undefined|Infinity|e-\d/);
        const root = drawn(valve).elements[0];
        expect(root && attributeOf(root, 'role')).toBe('img');
        expect(root && attributeOf(root, 'aria-label')).toBe(valve.sentence);
      }),
    );
  });

  test('the plug meets its seat when shut and clears it by the whole stroke when open', () => {
    for (const plugCloses of ['down', 'up'] as const) {
      const shut = seating({ plugCloses, openFraction: 0 });
      const open = seating({ plugCloses, openFraction: 1 });
      expect(shut.plugEdgeU).toBe(shut.seatU);
      expect(open.plugEdgeU - open.seatU).toBe(plugCloses === 'down' ? STROKE_U : -STROKE_U);
    }
  });

  test('plug, plate and connector all move 28 units times how far the stem is up', () => {
    fc.assert(
      fc.property(anyValve, (valve) => {
        const { byId } = drawn(valve);
        const upU = STROKE_U * stemUpFraction(valve);
        for (const name of ['plug', 'connector', 'plate']) {
          const part = byId(name);
          const shift = /^translate\(0 ([\d.]+)\)$/.exec((part && attributeOf(part, 'transform')) ?? '')?.[1];
          expect(Number(shift)).toBeCloseTo(upU, 1);
        }
      }),
    );
  });

  test('a plug that closes moving down opens with the stem, one that closes moving up against it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (openFraction) => {
        expect(stemUpFraction({ plugCloses: 'down', openFraction })).toBeCloseTo(openFraction, 12);
        expect(stemUpFraction({ plugCloses: 'up', openFraction })).toBeCloseTo(1 - openFraction, 12);
      }),
    );
  });

  test('air compresses the spring: its coils come closer the further air has moved the stem', () => {
    fc.assert(
      fc.property(anyValve, (valve) => {
        const pitch = (openFraction: number) => coilPitch({ ...valve, openFraction });
        const airOpens = (valve.plugCloses === 'down') === (valve.airMovesStem === 'up');
        const [withoutAir, withAir] = airOpens ? [pitch(0), pitch(1)] : [pitch(1), pitch(0)];
        expect(withAir).toBeLessThan(withoutAir);
        expect(withoutAir - withAir).toBeCloseTo(STROKE_U / 5.5, 9);
      }),
    );
  });

  test('a safe valve shows live colour only beyond its locks', () => {
    const safe = {
      supply: 'safe',
      signal: 'safe',
      inlet: 'safe',
      outlet: 'safe',
      spring: 'contained',
      tags: [],
    } as const;
    const locked = { shut: true, lock: '14' };
    const behind = sample({
      ...safe,
      supplyCock: locked,
      inletCock: locked,
      outletCock: locked,
      bypass: null,
      signalLine: 'capped',
    });
    const lines = drawn(behind).elements.filter((element) => attributeOf(element, 'class') === 'live-line');
    const ends = lines
      .filter((element) => attributeOf(element, 'd'))
      .map((element) => attributeOf(element, 'd'));
    expect(ends).toEqual(
      ['M0 416H48', 'M498 416H450', 'M0 173H24'].map((d) =>
        d.replace('173', behind.airMovesStem === 'up' ? '173' : '57'),
      ),
    );
    const alone = sample({
      ...safe,
      supplyCock: null,
      inletCock: null,
      outletCock: null,
      bypass: null,
      inletDrain: null,
      outletDrain: null,
    });
    const visible = valveSection(alone).replace(/<defs>.*<\/defs>/, '');
    expect(visible).not.toMatch(/live/);
  });

  test('held air is hatched and live air dotted, so that grey tells them apart (UI-13, UI-24)', () => {
    for (const signal of ['live', 'held'] as const) {
      expect(valveSection(sample({ signal, inlet: 'safe', outlet: 'safe' }))).toContain(
        `url(#valve-${signal})`,
      );
    }
  });

  test('names the ends of the scale as the plug moves: open on top only where it closes moving down', () => {
    for (const plugCloses of ['down', 'up'] as const) {
      const texts = drawn(sample({ plugCloses }))
        .elements.filter(({ tagName }) => tagName === 'text')
        .map(textOf);
      const order = texts.filter((text) => /open$|shut$/.test(text));
      expect(order).toEqual(plugCloses === 'down' ? ['100 open', '0 shut'] : ['0 shut', '100 open']);
    }
  });

  test('carries each lock with its number where it hangs', () => {
    const svg = valveSection(
      sample({ supplyCock: { shut: true, lock: '22' }, outletCock: { shut: true, lock: '23' } }),
    );
    expect(svg).toContain('>22</text>');
    expect(svg).toContain('>23</text>');
  });

  test('draws the body for flow over mirrored, so that the inlet stays left and opens above the seat', () => {
    const live = (flow: 'under' | 'over') => {
      const { elements } = drawn(sample({ flow, inlet: 'live', outlet: 'safe', signal: 'safe' }));
      const space = elements.find((element) => attributeOf(element, 'fill') === 'url(#valve-live)');
      const mirrored =
        space?.parentNode && 'attrs' in space.parentNode && attributeOf(space.parentNode, 'transform');
      return { path: (space && attributeOf(space, 'd')) ?? '', mirrored };
    };
    expect(live('under').path).toMatch(/-59.*H-104V24/);
    expect(live('under').mirrored).toBeUndefined();
    expect(live('over').path).toMatch(/V64H40.*H104V-24/);
    expect(live('over').mirrored).toBe('scale(-1 1)');
  });
});
