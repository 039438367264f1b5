declare module 'datapackage' {
  interface Row {
    readonly [field: string]: unknown;
  }
  class Package {
    static load(descriptor: string): Promise<Package>;
    getResource(name: string): { read(options: { keyed: true; relations?: boolean }): Promise<Row[]> } | null;
  }
  function validate(descriptor: object): Promise<{ valid: boolean; errors: Error[] }>;
  const frictionless: { readonly Package: typeof Package; readonly validate: typeof validate };
  export default frictionless;
}
