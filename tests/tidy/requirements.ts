import type { Requirement } from '../../safety/required/requirement.ts';

/** How a requirement is quoted: in the title of a test, or in a comment beside it. Test gear may be called R-02 too, between quotes. */
const QUOTED = /\b(?:SAF|EI|HP|RL|SA|WS|UI)-\d+\b|(?<=[( ])R-[01]\d\b/g;

/** What is wrong with the table itself. */
export function tableFaults(table: readonly Requirement[]): readonly string[] {
  const ids = table.map(({ id }) => id);
  return [
    ...ids.filter((id, at) => ids.indexOf(id) !== at).map((id) => `${id} stands twice`),
    ...ids
      .filter((id) => !/^(SAF|EI|HP|R|RL|SA|WS|UI)-\d{2}$/.test(id))
      .map((id) => `${id} is no id like SAF-01`),
    ...table
      .filter(({ text }) => !/\bshall\b/.test(text))
      .map(({ id }) => `${id} says nothing that shall be`),
    ...table
      .filter(({ notBuilt }) => notBuilt?.trim() === '')
      .map(({ id }) => `${id} is not built and says no reason`),
    ...table.filter(({ source }) => source.trim() === '').map(({ id }) => `${id} names no source`),
  ];
}

/** Requirements without a test, ids that tests quote and the table does not have, and tests of what is not built. */
export function quoteFaults(
  table: readonly Requirement[],
  tests: readonly { readonly path: string; readonly text: string }[],
): readonly string[] {
  const ids = new Set(table.map(({ id }) => id));
  const notBuilt = new Set(table.filter((row) => row.notBuilt !== undefined).map(({ id }) => id));
  const quotes = tests.flatMap(({ path, text }) => (text.match(QUOTED) ?? []).map((id) => ({ path, id })));
  const quoted = new Set(quotes.map(({ id }) => id));
  return [
    ...[...ids]
      .filter((id) => quoted.has(id) && notBuilt.has(id))
      .map((id) => `${id} is tested, and said not to be built`),
    ...[...ids]
      .filter((id) => !quoted.has(id) && !notBuilt.has(id))
      .map((id) => `${id} is quoted by no test`),
    ...quotes
      .filter(({ id }) => !ids.has(id))
      .map(({ path, id }) => `${path} quotes ${id}, which is not in the table`),
  ];
}
