// The package has no types of its own; what the tests read of a parsed file.
declare module 'dxf' {
  export interface ParsedEntity {
    readonly type: string;
    readonly layer: string;
    readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  }
  export function parseString(text: string): {
    readonly header: Readonly<Record<string, unknown>>;
    readonly entities: readonly ParsedEntity[];
  };
}
