import type { Kind } from '../sheet/column.ts';
import type { ColumnSchema } from './schemas.ts';

/** One column of a file as it will be read. */
export interface ColumnPlan {
  /** The name it gets. */
  readonly name: string;
  /** As the file writes it. */
  readonly heading: string;
  readonly kind: Kind;
  /** UCUM code of the finished column. */
  readonly unit: string;
  /** UCUM code of cells that name no unit, where the heading says another than `unit`. */
  readonly headingUnit?: string;
  /** Left out for a column of which nothing is known but its cells. */
  readonly schema?: ColumnSchema;
}
