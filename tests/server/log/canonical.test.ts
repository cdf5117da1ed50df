import { readFileSync } from 'node:fs';
import theirs from 'canonicalize';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Json } from '../../../procedures/json.ts';
import { canonical, parseStrict } from '../../../server/log/canonical.ts';
import { isCanonical, membersOf } from '../../../server/log/canonical-look.ts';
import { sha256 } from '../../../server/log/chain.ts';
import { canonicalText } from '../../../server/verifier/verify-export.ts';

function fixture(name: string): string {
  return readFileSync(new URL(`./fixtures/jcs/${name}.json`, import.meta.url), 'utf8');
}

/** RFC 8785, Appendix B: bits of the double, and how it is written. */
const NUMBERS = [
  ['0000000000000000', '0'],
  ['8000000000000000', '0'],
  ['0000000000000001', '5e-324'],
  ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'],
  ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'],
  ['c340000000000000', '-9007199254740992'],
  ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'],
  ['44b52d02c7e14af6', '1e+23'],
  ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'],
  ['444b1ae4d6e2ef4f', '999999999999999900000'],
  ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
  ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'],
  ['41b3de4355555554', '333333333.33333325'],
  ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'],
  ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'],
  ['43143ff3c1cb0959', '1424953923781206.2'],
] as const;

const ANY_VALUES = process.env.YOKESIDE_LONG === undefined ? 100 : 50_000;

function double(bits: string): number {
  return Buffer.from(bits, 'hex').readDoubleBE();
}

/** RFC 8785, section 3.2.4: the UTF-8 bytes of the sample of section 3.2.2. */
const SAMPLE_HEX =
  '7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c226e756d62657273223a' +
  '5b3333333333333333332e333333333333332c31652b33302c342e352c302e3030322c31652d3237' +
  '5d2c22737472696e67223a22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f227d';

describe('canonical JSON', () => {
  test.each(['arrays', 'french', 'structures', 'unicode', 'values', 'weird'])(
    'the published pair "%s" comes out as published, from the log and from the verifier alone (SA-32)',
    (name) => {
      for (const write of [canonical, canonicalText]) {
        expect(write(JSON.parse(fixture(`${name}.input`)))).toBe(fixture(`${name}.output`));
        expect(write(JSON.parse(fixture(`${name}.output`)))).toBe(fixture(`${name}.output`));
      }
    },
  );

  test.each(NUMBERS)('the double %s of RFC 8785 Appendix B is written %s', (bits, written) => {
    expect([canonical(double(bits)), canonicalText(double(bits))]).toEqual([written, written]);
  });

  test('the sample of RFC 8785 section 3.2.2 has the bytes of section 3.2.4 (SA-36)', () => {
    const sample = parseStrict(String.raw`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    }`);
    expect(Buffer.from(canonical(sample), 'utf8').toString('hex')).toBe(SAMPLE_HEX);
  });

  test.each([
    ['NaN', Number.NaN, 'NaN'],
    ['Infinity', Number.POSITIVE_INFINITY, 'Infinity'],
    ['minus Infinity', Number.NEGATIVE_INFINITY, '-Infinity'],
    ['undefined', undefined, 'undefined'],
    ['a big integer', 1n, 'bigint'],
    ['half a surrogate pair', 'a\ud800b', 'half a surrogate pair'],
    ['half a surrogate pair in a name', { '\udead': 1 }, 'half a surrogate pair'],
    ['a date', new Date(0), 'class Date'],
    ['a map', new Map(), 'class Map'],
    ['a function', () => 1, 'function'],
    ['a hole in an array', new Array(1), 'undefined'],
  ])('%s is refused, saying where (SA-33)', (_name, bad, what) => {
    // The compiler refuses these too; what arrives as plain JavaScript must be refused at run time.
    const value = { readings: [0, { wrong: bad }] } as unknown as Json;
    expect(() => canonical(value)).toThrow(what);
    expect(() => canonical(value)).toThrow('at ["readings"][1]["wrong"]');
  });

  test('a value nested too deep is refused instead of ending the program', () => {
    let deep: Json = [];
    for (let level = 0; level < 50_000; level += 1) deep = [deep];
    expect(() => canonical(deep)).toThrow('deeper than 100');
  });

  test('whatever JSON it is, reading it back gives the value, and writing that again the same text', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonical(value as Json);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
        expect(canonical(parseStrict(text))).toBe(text);
      }),
    );
  });

  test('whatever JSON it is, the quick look takes no text that is not canonical, and nearly all that are', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const plain = JSON.stringify(value);
        const read = JSON.parse(plain);
        if (isCanonical(plain)) expect(canonical(read)).toBe(plain);
        if (typeof read === 'object' && read !== null && !Array.isArray(read)) {
          const names = Object.keys(read).sort();
          const texts = names.map((name) => canonical(read[name]));
          expect(membersOf(canonical(read), names) ?? texts).toEqual(texts);
          expect(membersOf(canonical(read), [...names, '~'])).toBeUndefined();
        }
        const text = canonical(read);
        expect(isCanonical(text) || text.includes('\\')).toBe(true);
      }),
      { numRuns: ANY_VALUES },
    );
    const deep = `${'['.repeat(150)}${']'.repeat(150)}`;
    const doubtful = [
      '{"b":1,"a":2}',
      '{"a":1,"a":1}',
      '{"a": 1}',
      '-0',
      '1.0',
      '"\\ud800"',
      '{"9":1,"10":1}',
      '{"a":{"b":1,"b":2}}',
      '[{"b":1},{"b":1,"a":2}]',
      '{"a":[1, 2]}',
      '[1e3]',
      '[0.10]',
      '[1E400]',
      '[9007199254740993]',
      ' 1',
      '1\n',
      '"\\u0061"',
      deep,
      // What is not JSON at all.
      '',
      '"',
      '"a',
      '"a\u0000"',
      '{"a":1',
      '{"a":1,}',
      '{"a"}',
      '[1,',
      '[,1]',
      '1,2',
      '1.',
      '-',
      '01',
      'nul',
      'NaN',
      'Infinity',
      '"tab\t"',
      '0.0000010',
      '0.0000001',
    ];
    for (const text of doubtful) expect(isCanonical(text), text).toBe(false);
  });

  test('a line of a log with one letter changed, more or missing is taken by the quick look only where it is canonical', () => {
    const line = canonical({
      at: '2026-11-25T08:00:00.000Z',
      effects: { locks: { inletLock: null }, supersedes: [3, 12], to: 'vent' },
      inputs: {
        readings: [{ typed: '9 \u03bcm', valueSi: 9e-6 }, { valueSi: -62052.8 }],
        row: 0,
        seen: true,
      },
      outcome: { figures: { spanPa: 1e21 }, name: 'ins\u{1f600}ide' },
      seq: 137,
    });
    expect(isCanonical(line)).toBe(true);
    const letters = [...'{}[],:" \n\\019-+.eEab', '\u00e9', '\u{1f600}'];
    let taken = 0;
    for (let at = 0; at <= line.length; at += 1) {
      for (const letter of ['', ...letters]) {
        for (const rest of [at, at + 1, at + 2]) {
          const changed = line.slice(0, at) + letter + line.slice(rest);
          if (!isCanonical(changed)) continue;
          taken += 1;
          const read = readOrUndefined(changed);
          if (read === undefined || canonicalText(read) !== changed) expect.fail(changed);
        }
      }
    }
    expect(taken).toBeGreaterThan(1000);
  });

  test('the quick look at a short text is not misled by a longer one before it, nor by one of any length', () => {
    const long = canonical({ a: 'x'.repeat(30_000), b: 1 });
    for (const text of ['{"a":12}', '[true]', '12', long]) {
      expect(isCanonical('9'.repeat(40))).toBe(false);
      expect(isCanonical(`[${'7,'.repeat(40)}7]`)).toBe(true);
      expect(isCanonical(text)).toBe(true);
      for (const end of [1, 2, 3].filter((less) => text.length > less))
        expect(readOrUndefined(text.slice(0, -end)) !== undefined).toBe(isCanonical(text.slice(0, -end)));
    }
    expect(membersOf(long, ['b'])).toEqual(['1']);
  });

  test('a number of any digits is taken by the quick look only as it is written anew', () => {
    const digits = fc.stringMatching(/^-?\d{1,19}(\.\d{1,19})?(e[+-]?\d{1,3})?$/);
    fc.assert(
      fc.property(digits, fc.double({ noNaN: true, noDefaultInfinity: true }), (typed, value) => {
        expect(isCanonical(typed)).toBe(String(Number(typed)) === typed);
        expect(isCanonical(`[${canonical(value)}]`)).toBe(true);
      }),
      { numRuns: ANY_VALUES },
    );
  });

  test('whatever JSON it is, a library that shares nothing with us writes the same bytes, and so does the verifier (SA-32, SA-36)', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4, stringUnit: 'binary' }), (value) => {
        const text = canonical(value as Json);
        expect([text, canonicalText(value)]).toEqual([theirs(value), theirs(value)]);
      }),
      { numRuns: ANY_VALUES },
    );
  });

  test('a double of any bits is written as that library writes it', () => {
    const bits = fc.uint8Array({ minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(bits, (bytes) => {
        const number = Buffer.from(bytes).readDoubleBE();
        fc.pre(Number.isFinite(number));
        expect(canonical(number)).toBe(theirs(number));
      }),
      { numRuns: ANY_VALUES },
    );
  });

  test('text stays as it was given: one letter in two forms is two texts with two hashes (SA-35)', () => {
    const [whole, joined] = ['caf\u00e9', 'cafe\u0301'];
    expect(whole.normalize()).toBe(joined.normalize());
    for (const text of [whole, joined]) expect(parseStrict(canonical(text))).toBe(text);
    expect(sha256(canonical(whole))).not.toBe(sha256(canonical(joined)));
  });

  test('the order in which names were given makes no difference', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string({ unit: 'grapheme' }), fc.integer()), (value) => {
        const turned = Object.fromEntries(Object.entries(value).reverse());
        expect(canonical(turned)).toBe(canonical(value));
      }),
    );
  });
});

describe('strict reading', () => {
  test.each([
    ['a name given twice', '{"a":1,"a":1}', 'The name "a" is given twice.'],
    ['a name given twice, once escaped', '{"a":1,"\\u0061":2}', 'The name "a" is given twice.'],
    ['a name given twice deep inside', '[{"b":[{"x":{},"y":"}{","x":1}]}]', 'The name "x" is given twice.'],
    ['a number beyond a double', '[1e999]', 'Infinity'],
    ['half a surrogate pair', '"\\ud800"', 'half a surrogate pair'],
    ['a comma too many', '[1,]', 'JSON'],
    ['a comment', '{} // no', 'JSON'],
    ['nothing', '', 'JSON'],
  ])('%s is refused (SA-33)', (_name, text, message) => {
    expect(() => parseStrict(text)).toThrow(SyntaxError);
    expect(() => parseStrict(text)).toThrow(message);
  });

  test('one name in different objects, or as a text, is no double', () => {
    const text = '{"a":{"a":"a","b":"a"},"b":["a","a"],"c":"{\\"a\\":1,\\"a\\":2}"}';
    expect(parseStrict(text)).toEqual(JSON.parse(text));
  });

  test('a member called __proto__ stays a member and changes nothing', () => {
    const read = parseStrict('{"__proto__":{"polluted":true}}');
    expect(canonical(read)).toBe('{"__proto__":{"polluted":true}}');
    expect(Object.getPrototypeOf(read)).toBe(Object.prototype);
  });
});

function readOrUndefined(text: string): Json | undefined {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return undefined;
  }
}
