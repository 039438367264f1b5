import { describe, expect, it } from 'vitest';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { sql } from '../../../lib/sheet/formula/sql.ts';
import { relations } from './smallHerd.ts';

/** The statement on one line. */
function write(formulas: Record<string, string>, names: readonly string[], rowId?: string, table = 'feet'): string {
  const columns = Object.entries(formulas).map(([name, formula]) => ({ name, node: parse(formula) }));
  return sql(columns, { table, names, relations, rowId }).replace(/\s+/g, ' ');
}

const foot = ['horse_id', 'date', 'limb', 'toe'];

describe('sql', () => {
  it('of formulas over one row is one plain SELECT of the stored and the computed columns', () => {
    expect(write({ gap: 'a - b', ratio: 'a / b' }, ['a', 'b'])).toBe(
      'SELECT "a", "b", ("a" - "b") AS "gap", ("a" / NULLIF("b", 0)) AS "ratio" FROM "feet"',
    );
    expect(write({}, ['a'])).toBe('SELECT "a" FROM "feet"');
    expect(write({ root: 'sqrt(a)', low: 'least(a, 5)' }, ['a'])).toBe(
      'SELECT "a", CASE WHEN "a" >= 0 THEN SQRT("a") END AS "root",' +
        ' CASE WHEN "a" <= 5E0 THEN "a" WHEN "a" > 5E0 THEN 5E0 END AS "low" FROM "feet"',
    );
  });

  it('gives a name to a part only where its operation needs it more than once', () => {
    expect(write({ x: '(a + b) * a' }, ['a', 'b'])).toBe('SELECT "a", "b", (("a" + "b") * "a") AS "x" FROM "feet"');
    expect(write({ x: 'sqrt(s ? a : b)' }, ['s', 'a', 'b'])).toBe(
      'WITH "stage_1" AS ( SELECT "s", "a", "b", CASE "s" WHEN TRUE THEN "a" WHEN FALSE THEN "b" END AS "part_1" FROM "feet" )' +
        ' SELECT "s", "a", "b", CASE WHEN "part_1" >= 0 THEN SQRT("part_1") END AS "x" FROM "stage_1"',
    );
    expect(write({ x: 'sqrt(mean(a))' }, ['a'])).toBe(
      'WITH "stage_1" AS ( SELECT "a", AVG("a") OVER () AS "part_1" FROM "feet" )' +
        ' SELECT "a", CASE WHEN "part_1" >= 0 THEN SQRT("part_1") END AS "x" FROM "stage_1"',
    );
  });

  it('writes windows in a stage of their own, each once', () => {
    expect(write({ off: 'a - mean(a, h)', share: 'a / mean(a, h)' }, ['h', 'a'])).toBe(
      'WITH "stage_1" AS ( SELECT "h", "a", AVG("a") OVER (PARTITION BY "h") AS "part_1" FROM "feet" )' +
        ' SELECT "h", "a", ("a" - "part_1") AS "off", ("a" / NULLIF("part_1", 0)) AS "share" FROM "stage_1"',
    );
  });

  it('computes a column that others name once, before them', () => {
    const statement = write({ twice: 'gap + gap', gap: 'a - mean(a)' }, ['a']);
    expect(statement.match(/"a" - /g)).toHaveLength(1);
    expect(statement).toMatch(/SELECT "a", \("gap" \+ "gap"\) AS "twice", "gap" FROM "stage_2"$/);
  });

  it('puts windows over windows into stages one after the other', () => {
    const statement = write({ m: 'mean(a - mean(a, h))' }, ['h', 'a']);
    expect(statement).toContain('"stage_2" AS ( SELECT *, AVG(("a" - "part_1")) OVER () AS "part_2" FROM "stage_1" )');
    expect(statement).not.toMatch(/OVER \([^()]*OVER/);
  });

  it('computes last what no other column rests on, so that windows need not carry it', () => {
    const statement = write({ twice: 'a * 2', m: 'mean(a - mean(a))' }, ['a']);
    expect(statement).toMatch(/^WITH "stage_1"[^*]*\), "stage_2"/);
    expect(statement).toMatch(/SELECT "a", \("a" \* 2E0\) AS "twice", "part_2" AS "m" FROM "stage_2"$/);
  });

  it('looks at the other rows of a relation through windows, and only where there is one row', () => {
    const other =
      'CASE WHEN COUNT(CASE WHEN "limb" = \'RF\' THEN 1 END) OVER (PARTITION BY "horse_id", "date") = 1' +
      ' THEN MAX(CASE WHEN "limb" = \'RF\' THEN "toe" END) OVER (PARTITION BY "horse_id", "date") END';
    expect(write({ o: 'opposite(toe)' }, foot)).toContain(
      `CASE WHEN "horse_id" IS NULL OR "date" IS NULL THEN NULL WHEN "limb" = 'LF' THEN ${other} WHEN "limb" = 'RF'`,
    );
    const before = write({ p: 'previous(toe)' }, [...foot, 'moment']);
    expect(before).toContain(
      'CASE WHEN "horse_id" IS NULL OR "limb" IS NULL OR "date" IS NULL THEN NULL WHEN COUNT(*) OVER (PARTITION BY',
    );
    expect(before).toContain(
      'DENSE_RANK() OVER (PARTITION BY "horse_id", "limb" ORDER BY "date" NULLS LAST) AS "part_1"',
    );
    expect(before).toContain(
      'MAX("toe") OVER (PARTITION BY "horse_id", "limb", "moment" ORDER BY "part_1" RANGE BETWEEN 1 PRECEDING AND 1 PRECEDING)',
    );
  });

  it('ranks what a relation looks before only once the columns are there that it goes by', () => {
    const earlier = { name: 'earlier', words: 'the earlier', match: ['side'], before: 'date' };
    const columns = [
      { name: 'side', node: parse('limb == "LF"') },
      { name: 'x', node: parse('earlier(toe)') },
    ];
    const statement = sql(columns, { table: 'feet', names: foot, relations: [earlier] }).replace(/\s+/g, ' ');
    expect(statement).toMatch(
      /AS "side" FROM "feet" \), "stage_2" AS \( SELECT \*, DENSE_RANK\(\) OVER \(PARTITION BY "side"/,
    );
  });

  it('follows a relation that goes by nothing but what it swaps', () => {
    const twin = { name: 'twin', words: 'the twin', match: [], swap: { limb: { LF: 'RF' } } };
    const column = { name: 'x', node: parse('twin(toe)') };
    expect(sql([column], { table: 'feet', names: foot, relations: [twin] })).toContain(
      `CASE WHEN "limb" = 'LF' THEN CASE WHEN COUNT(CASE WHEN "limb" = 'RF' THEN 1 END) OVER () = 1`,
    );
  });

  it('says that no window follows a relation that both swaps and looks before', () => {
    const both = { name: 'both', words: 'both', match: ['h'], swap: { limb: { LF: 'RF' } }, before: 'date' };
    const column = { name: 'x', node: parse('both(toe)') };
    expect(() => sql([column], { table: 'feet', names: foot, relations: [both] })).toThrow(
      /relation both both swaps and looks before.*Make it two relations/,
    );
    expect(() => sql([column], { table: 'feet', names: foot, relations: [] })).toThrow(
      /both is no function or relation/,
    );
  });

  it('writes a part once that its operation needs more than once, so that text never doubles', () => {
    let formula = 'a';
    for (let i = 0; i < 40; i++) formula = `sqrt(${formula})`;
    expect(write({ root: formula }, ['a']).length).toBeLessThan(10_000);
  });

  it('writes quantiles from ranks, for which the standard has windows', () => {
    const statement = write({ q: 'quantile(a, 0.25, h)', m: 'median(a, h)' }, ['h', 'a']);
    expect(statement.match(/ROW_NUMBER\(\)/g)).toHaveLength(1);
    expect(statement).not.toMatch(/MEDIAN|QUANTILE|PERCENTILE/i);
  });

  it('quotes names and texts, whatever they hold', () => {
    expect(write({ 'x"; --': 'column("a\\"b") == "it\'s"' }, ['a"b'], undefined, 'my "feet"')).toBe(
      `SELECT "a""b", ("a""b" = 'it''s') AS "x""; --" FROM "my ""feet"""`,
    );
    expect(write(Object.fromEntries([['__proto__', 'a + 1']]), ['a'])).toContain('("a" + 1E0) AS "__proto__"');
  });

  it('writes numbers as doubles, missing ones as NULL, and no two minus signs side by side', () => {
    const of = (formula: string) => write({ x: formula }, []).replace(/^SELECT (.*) AS "x" FROM "feet"$/, '$1');
    expect(of('0.1')).toBe('1E-1');
    expect(of('0')).toBe('0E0');
    expect(of('1e300')).toBe('1E300');
    expect(of('-5')).toBe('(-5E0)');
    expect(
      sql(
        [
          {
            name: 'x',
            node: {
              kind: 'unary',
              operator: '-',
              operand: { kind: 'number', value: -5, start: 0, end: 0 },
              start: 0,
              end: 0,
            },
          },
        ],
        { table: 'feet', names: [], relations },
      ),
    ).toContain('(-(-5E0))');
    expect(
      sql([{ name: 'x', node: { kind: 'number', value: Number.NaN, start: 0, end: 0 } }], {
        table: 'feet',
        names: [],
        relations,
      }),
    ).toContain('NULL AS "x"');
    expect(of('a == ""')).toBe('("a" = NULL)');
  });

  it('takes names of its own that nobody has, in whatever case', () => {
    const statement = write({ m: 'a - mean(a)' }, ['a', 'PART_1', 'Stage_1'], undefined, 'stage_2');
    expect(statement).toContain('AS "part_2"');
    expect(statement).toContain('WITH "stage_3" AS');
    expect(statement).toMatch(/FROM "stage_3"$/);
  });

  it('sorts by a stored column, without giving it out where it is not asked for', () => {
    expect(write({ m: 'mean(a)' }, ['a'], 'row')).toBe(
      'WITH "stage_1" AS ( SELECT "row", "a", AVG("a") OVER () AS "part_1" FROM "feet" ) SELECT "a", "part_1" AS "m" FROM "stage_1" ORDER BY "row"',
    );
    expect(write({ b: 'a + 1' }, ['a'], 'a')).toBe('SELECT "a", ("a" + 1E0) AS "b" FROM "feet" ORDER BY "a"');
  });
});
