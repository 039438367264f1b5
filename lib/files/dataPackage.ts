import type { Column, Kind } from '../sheet/column.ts';
import type { DescribedColumn } from './describeColumn.ts';
import { fullDescription, known } from './fullDescription.ts';
import { namedColumns, type Writable } from './writable.ts';

export interface ForeignKey {
  readonly fields: readonly string[];
  readonly reference: { readonly resource: string; readonly fields: readonly string[] };
}

/** A table that was written by `writeTable`, to be described. */
export interface Resource {
  /** Lower-case letters, digits, `.`, `_`, `-`. */
  readonly name: string;
  /** Of the file, from where `datapackage.json` lies. */
  readonly path: string;
  readonly title?: string;
  readonly description?: string;
  readonly columns: Writable;
  /** Beside what is known of a column by its name. */
  readonly describe?: (name: string) => DescribedColumn;
  /** Columns that together name a row, and are never missing. */
  readonly primaryKey?: readonly string[];
  readonly foreignKeys?: readonly ForeignKey[];
}

export interface PackageOptions {
  readonly name?: string;
  readonly title?: string;
  readonly description?: string;
  /** When it was made, as RFC 3339 writes a moment. */
  readonly created?: string;
  /** What the formulas and ranges rest on. */
  readonly sources?: readonly { readonly title: string; readonly path?: string }[];
}

export interface PackageField extends DescribedColumn {
  readonly name: string;
  readonly type: 'number' | 'string' | 'date' | 'boolean';
  readonly constraints?: { readonly enum: readonly string[] };
  readonly trueValues?: readonly string[];
  readonly falseValues?: readonly string[];
}

export interface PackageResource {
  readonly $schema: string;
  readonly name: string;
  readonly path: string;
  readonly title?: string;
  readonly description?: string;
  readonly type: 'table';
  readonly format: 'csv';
  readonly mediatype: 'text/csv';
  readonly encoding: 'utf-8';
  readonly dialect: Readonly<Record<string, string>>;
  readonly schema: {
    readonly $schema: string;
    readonly fields: readonly PackageField[];
    readonly missingValues: readonly string[];
    readonly primaryKey?: readonly string[];
    readonly foreignKeys?: readonly ForeignKey[];
  };
}

export interface PackageDescriptor extends PackageOptions {
  readonly $schema: string;
  readonly name: string;
  readonly resources: readonly PackageResource[];
}

const profiles = 'https://datapackage.org/profiles/2.0';

const types: Readonly<Record<Kind, PackageField['type']>> = {
  number: 'number',
  text: 'string',
  date: 'date',
  boolean: 'boolean',
};

/**
 * The contents of a `datapackage.json` beside tidy files, so that R and Python read them unaided: types, titles,
 * descriptions, formulas, sources, and units by UCUM code in `unit`, a property of our own that the standard has none for.
 * @source Data Package, version 2.0, https://datapackage.org
 * @example JSON.stringify(dataPackage([{ name: 'feet', path: 'feet.csv', columns: feet }]), null, 2)
 */
export function dataPackage(resources: readonly Resource[], options: PackageOptions = {}): PackageDescriptor {
  const { name = 'hoof-measurements', title, description, created, sources } = options;
  return {
    $schema: `${profiles}/datapackage.json`,
    ...known({ name, title, description, created, sources }),
    resources: resources.map(resourceOf),
  };
}

function resourceOf(resource: Resource): PackageResource {
  const { name, path, title, description, primaryKey, foreignKeys } = resource;
  const table = namedColumns(resource.columns);
  return {
    $schema: `${profiles}/dataresource.json`,
    ...known({ name, path, title, description }),
    type: 'table',
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    dialect: { $schema: `${profiles}/tabledialect.json`, delimiter: ',', lineTerminator: '\n', quoteChar: '"' },
    schema: {
      $schema: `${profiles}/tableschema.json`,
      fields: table.names.map((column) => field(column, table.column(column), resource.describe)),
      missingValues: [''],
      ...known({ primaryKey, foreignKeys }),
    },
  };
}

function field(name: string, column: Column, describe: Resource['describe']): PackageField {
  const { words, unit, ...about } = fullDescription(name, column, describe);
  return {
    ...{ name, type: types[column.kind] },
    ...about,
    ...known({ unit }),
    ...(column.kind === 'boolean' && { trueValues: ['TRUE'], falseValues: ['FALSE'] }),
    ...(words && { constraints: { enum: words } }),
  };
}
