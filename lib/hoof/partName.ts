const unit = /_(mm|cm|deg|percent|cm2|kg|kg_per_cm2)$/;

/**
 * The name of a part of a column; the unit stays at the end.
 * @example partName('wall_level_mm', 'start') // 'wall_level_start_mm'
 */
export function partName(column: string, part: string): string {
  const end = unitSuffix(column);
  return `${column.slice(0, column.length - end.length)}_${part}${end}`;
}

/** The unit at the end of a column's name with the line before it, `_mm`; nothing where there is none. */
export function unitSuffix(column: string): string {
  return unit.exec(column)?.[0] ?? '';
}
