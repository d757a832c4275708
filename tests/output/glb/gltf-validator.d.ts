declare module 'gltf-validator' {
  interface Issue {
    readonly code: string;
    readonly message: string;
    readonly severity: number;
    readonly pointer: string;
  }
  interface Report {
    readonly issues: { readonly numErrors: number; readonly numWarnings: number; readonly messages: readonly Issue[] };
    readonly info: { readonly animationCount: number; readonly materialCount: number };
  }
  export function validateBytes(bytes: Uint8Array, options?: { readonly maxIssues?: number }): Promise<Report>;
}
