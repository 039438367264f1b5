declare module '@lhncbc/ucum-lhc' {
  interface Conversion {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number;
    readonly msg: readonly string[];
  }
  export class UcumLhcUtils {
    static getInstance(): UcumLhcUtils;
    convertUnitTo(from: string, value: number, to: string): Conversion;
    validateUnitString(code: string): { readonly status: 'valid' | 'invalid' | 'error' };
  }
}
