/**
 * The formula language's syntax tree. Few node kinds, closed; what can be called is open and lives in `functions.ts`.
 * `start` and `end` are character offsets into the formula's text, so that an error can underline its place.
 */
export interface Place {
  readonly start: number;
  readonly end: number;
}

export type ArithmeticOperator = '+' | '-' | '*' | '/' | '%' | '**';
export type ComparisonOperator = '<' | '<=' | '>' | '>=' | '==' | '!=';
export type LogicalOperator = '&&' | '||';

export type Node = Place &
  (
    | { readonly kind: 'number'; readonly value: number }
    | { readonly kind: 'text'; readonly value: string }
    | { readonly kind: 'column'; readonly name: string }
    | { readonly kind: 'unary'; readonly operator: '-' | '!'; readonly operand: Node }
    | {
        readonly kind: 'binary';
        readonly operator: ArithmeticOperator | ComparisonOperator | LogicalOperator;
        readonly left: Node;
        readonly right: Node;
      }
    | { readonly kind: 'conditional'; readonly test: Node; readonly then: Node; readonly otherwise: Node }
    | { readonly kind: 'call'; readonly name: string; readonly args: readonly Node[] }
  );

/** A formula that can't be used: `message` says what was found, what was expected and the way out. */
export class FormulaError extends Error {
  override readonly name = 'FormulaError';
  constructor(
    message: string,
    readonly start: number,
    readonly end: number,
  ) {
    super(message);
  }
}
