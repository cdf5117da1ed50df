import { expect, it } from 'vitest';
import {
  PACKING_FRICTION_TABLES,
  type PackingFrictionTable,
} from '../../../procedures/calculations/packing-tables.ts';
import { SOURCES } from '../../../procedures/calculations/sources.ts';

const tables: readonly PackingFrictionTable[] = Object.values(PACKING_FRICTION_TABLES);

it.each(tables)('$title: thicker stems, double packing and higher classes cost more', ({ rows, source }) => {
  expect(Object.keys(SOURCES)).toContain(source);
  for (const [at, row] of rows.entries()) {
    const thinner = rows[at - 1];
    expect(row.ptfeDoubleLbf).toBeGreaterThan(row.ptfeSingleLbf);
    expect(row.ptfeSingleLbf).toBeGreaterThan(thinner?.ptfeSingleLbf ?? 0);
    const graphite = Object.values(row.graphiteLbf);
    expect(graphite).toEqual(graphite.toSorted((a, b) => a - b));
    if (graphite[0] !== undefined) expect(graphite[0]).toBeGreaterThan(row.ptfeSingleLbf);
  }
});
