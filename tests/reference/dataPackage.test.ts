// Data Package and Table Schema by the Frictionless libraries for JavaScript: npm datapackage 1.1.10 with tableschema
// 1.12.6, which know version 1 of the standard. Version 2 keeps its descriptors valid and adds properties, checked by hand
// from https://datapackage.org (`$schema` at every level in place of `profile`, `categories`, custom properties allowed).
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import frictionless from 'datapackage';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dataPackage, type PackageDescriptor } from '../../lib/files/dataPackage.ts';
import { readTable } from '../../lib/files/readTable.ts';
import { tableChunks } from '../../lib/files/writeTable.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { type Columns, toColumn } from '../../lib/sheet/column.ts';
import { parseUnit } from '../../lib/sheet/dimension.ts';

const numbers = (...values: number[]) => Float64Array.from(values);

const feet: Columns = {
  horse_id: { values: ['Bella', 'Bella', '=Max'] },
  date: { kind: 'date', values: numbers(20_521, 20_521, 20_522) },
  limb: { values: ['LF', 'RF', 'LH'] },
  moment: { values: ['before', '', 'after'] },
  toe_angle_deg: { unit: 'deg', values: numbers(52, 50.1 + 0.2, Number.NaN) },
  shod: { kind: 'boolean', values: numbers(1, 0, Number.NaN) },
  frog_ratio: { unit: '1', values: numbers(0.75, -0, 5e-324) },
  sole_load_kg_per_cm2: { unit: 'kg/cm2', values: numbers(1.5, 2.25, Number.NaN) },
  notes: { values: ['a, "b"\nc', '007', ''] },
};
const horses: Columns = {
  horse_id: { values: ['Bella', '=Max'] },
  weight_kg: { unit: 'kg', values: numbers(480, Number.NaN) },
};

const descriptor = dataPackage(
  [
    { name: 'horses', path: 'horses.csv', columns: horses, primaryKey: ['horse_id'] },
    {
      ...{ name: 'feet', path: 'feet.csv', title: 'Feet', columns: feet },
      describe: (name) => (name === 'notes' ? { title: 'Notes', description: 'Whatever was noted.' } : {}),
      foreignKeys: [{ fields: ['horse_id'], reference: { resource: 'horses', fields: ['horse_id'] } }],
    },
  ],
  { name: 'demo', title: 'A demo', created: '2026-03-09T10:00:00Z', sources: [{ title: 'Measured at the yard' }] },
);

/** The same in the words of version 1, whose profiles check each field against its type. */
function inVersionOne(described: PackageDescriptor): object {
  return {
    ...described,
    profile: 'tabular-data-package',
    resources: described.resources.map((resource) => ({ ...resource, profile: 'tabular-data-resource' })),
  };
}

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenhoof-package-'));
  writeFileSync(join(folder, 'feet.csv'), Buffer.concat([...tableChunks(feet)]));
  writeFileSync(join(folder, 'horses.csv'), Buffer.concat([...tableChunks(horses)]));
  writeFileSync(join(folder, 'datapackage.json'), JSON.stringify(descriptor, null, 2));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('dataPackage', () => {
  it('is valid for a Frictionless validator, as it stands and by the stricter profile for tables', async () => {
    expect(await frictionless.validate(descriptor)).toEqual({ valid: true, errors: [] });
    expect(await frictionless.validate(inVersionOne(descriptor))).toEqual({ valid: true, errors: [] });
  });

  it('would not be valid with a type that the standard lacks, so the validator does look', async () => {
    const broken = structuredClone(inVersionOne(descriptor)) as {
      resources: { schema: { fields: { type: string }[] } }[];
    };
    broken.resources[1].schema.fields[4].type = 'angle';
    expect((await frictionless.validate(broken)).valid).toBe(false);
  });

  it('lets a Frictionless reader read the files unaided: types, missing cells, every bit, and the link between them', async () => {
    const described = await frictionless.Package.load(join(folder, 'datapackage.json'));
    const rows = await described.getResource('feet')!.read({ keyed: true, relations: true });
    expect(rows).toHaveLength(3);
    const [first, second, third] = rows as Record<string, unknown>[];
    expect(first).toMatchObject({ limb: 'LF', moment: 'before', toe_angle_deg: 52, shod: true, notes: 'a, "b"\nc' });
    expect(first.horse_id).toMatchObject({ horse_id: 'Bella', weight_kg: 480 });
    expect((first.date as Date).getFullYear()).toBe(2026);
    expect(second).toMatchObject({ moment: null, toe_angle_deg: 50.1 + 0.2, shod: false, notes: '007' });
    expect(second.frog_ratio).toBe(-0);
    expect(third).toMatchObject({ toe_angle_deg: null, shod: null, frog_ratio: 5e-324, notes: null });
  });

  it('states the profile of version 2 at package, resource, dialect and schema level', () => {
    const [resource] = descriptor.resources;
    expect(descriptor.$schema).toBe('https://datapackage.org/profiles/2.0/datapackage.json');
    expect(resource.$schema).toBe('https://datapackage.org/profiles/2.0/dataresource.json');
    expect(resource.dialect.$schema).toBe('https://datapackage.org/profiles/2.0/tabledialect.json');
    expect(resource.schema.$schema).toBe('https://datapackage.org/profiles/2.0/tableschema.json');
  });

  it('gives each number its unit as a UCUM code, and built-in columns their formula and source', () => {
    const fields = new Map(descriptor.resources[1].schema.fields.map((field) => [field.name, field]));
    expect(fields.get('sole_load_kg_per_cm2')?.unit).toBe('kg/cm2');
    expect(fields.get('toe_angle_deg')).toMatchObject({ title: 'Toe angle', unit: 'deg', type: 'number' });
    expect(fields.get('frog_ratio')).toMatchObject({ unit: '1', formula: 'frog_width_mm / frog_length_mm' });
    expect(fields.get('frog_ratio')?.source).toMatch(/Turner/);
    expect(fields.get('date')).not.toHaveProperty('unit');
    expect(fields.get('limb')?.constraints).toEqual({ enum: ['LF', 'RF', 'LH', 'RH'] });
    expect(fields.get('notes')).toMatchObject({ title: 'Notes', description: 'Whatever was noted.' });
  });

  it('describes every built-in column, each with a unit that is one', () => {
    const all: Columns = Object.fromEntries(measures.map(({ name, unit }) => [name, { unit, values: numbers(1) }]));
    const [{ schema }] = dataPackage([{ name: 'all', path: 'all.csv', columns: all }]).resources;
    for (const { name, title, description, formula, unit } of schema.fields) {
      expect([name, title, description, formula].every((text) => text !== undefined && text !== '')).toBe(true);
      expect(parseUnit(unit!).code).toBe(unit);
    }
  });

  it('takes a sheet’s columns as they come', () => {
    const sheet = { names: Object.keys(feet), column: (name: string) => toColumn(feet[name]) };
    const [resource] = dataPackage([{ name: 'feet', path: 'feet.csv', columns: sheet }]).resources;
    expect(resource.schema.fields).toHaveLength(sheet.names.length);
  });

  it('goes with files that read back as they were written', () => {
    const { columns } = readTable(Buffer.concat([...tableChunks(feet)]));
    expect([...columns.toe_angle_deg.values]).toEqual([52, 50.1 + 0.2, Number.NaN]);
    expect([...columns.horse_id.values]).toEqual(['Bella', 'Bella', '=Max']);
  });
});
