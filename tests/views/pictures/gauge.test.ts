import { describe, expect, test } from 'vitest';
import { gauge } from '../../../views/pictures/gauge.ts';

const half = { id: 'g', label: 'Supply gauge', from: '0', to: '30 psi', text: '15.0 psi', fraction: 0.5 };

describe('A gauge', () => {
  test('points straight up at half its scale, and says number and unit in words', () => {
    const drawn = gauge({ ...half, kind: 'dial' });
    expect(drawn).toContain('id="g" class="gauge__pointer" transform="rotate(0)"');
    expect(drawn).toContain('aria-label="Supply gauge: 15.0 psi"');
  });

  test('stays on its scale whatever it is told', () => {
    expect(gauge({ ...half, kind: 'dial', fraction: 7 })).toContain('transform="rotate(135)"');
    expect(gauge({ ...half, kind: 'dial', fraction: -7 })).toContain('transform="rotate(-135)"');
    expect(gauge({ ...half, kind: 'scale', fraction: 7 })).toContain(
      'class="gauge__pointer" transform="translate(0 24)"',
    );
  });

  test('of travel has shut below and open above', () => {
    const at = (fraction: number) =>
      Number(
        /gauge__pointer" transform="translate\(0 ([\d.]+)\)/.exec(
          gauge({ ...half, kind: 'scale', fraction }),
        )?.[1],
      );
    expect(at(0)).toBeGreaterThan(at(1));
  });
});
