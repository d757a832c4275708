import type { Job } from './jobSchema.ts';

/**
 * Dotted path of a field of the job, or of a part that holds fields, as `leather.outside.min_mm`. A list is one field: its
 * items are not patched one by one.
 */
export type JobPath = PathIn<Job>;

type PathIn<Part> = Part extends Leaf ? never : Part extends object ? PathAt<Part, keyof Part & string> : never;

type Leaf = number | string | boolean | readonly unknown[];

type PathAt<Part, Key extends keyof Part & string> = Key extends string ? Key | `${Key}.${PathIn<Part[Key]>}` : never;
