import { count } from '../refusal.ts';

/** What of a drawing is left out, with its name for one and for several. */
const KINDS = {
  text: ['text (turn text into paths first)', 'texts (turn text into paths first)'],
  picture: ['picture', 'pictures'],
  script: ['script', 'scripts'],
  handler: ['event handler', 'event handlers'],
  styles: ['style sheet', 'style sheets'],
  foreign: ['foreign content', 'foreign contents'],
  animation: ['animation', 'animations'],
  link: ['link', 'links'],
  reference: ['reference to something that is not in the file', 'references to something that is not in the file'],
  loop: ['reference to itself', 'references to themselves'],
  entity: ['entity', 'entities'],
  clip: ['clip or mask (what it hides is drawn)', 'clips and masks (what they hide is drawn)'],
  broken: ['rest of a path that breaks off', 'rests of paths that break off'],
  huge: ['line with numbers that are too large', 'lines with numbers that are too large'],
  other: ['unknown element', 'unknown elements'],
} as const;

export type LeftOutKind = keyof typeof KINDS;

/** Counts what is left out of a drawing. */
export class LeftOut {
  private readonly counts = new Map<LeftOutKind, number>();

  add(kind: LeftOutKind): void {
    this.counts.set(kind, (this.counts.get(kind) ?? 0) + 1);
  }

  /** `3 texts (turn text into paths first)`, each kind once. */
  words(): string[] {
    return (Object.keys(KINDS) as LeftOutKind[]).flatMap((kind) => {
      const times = this.counts.get(kind) ?? 0;
      return times === 0 ? [] : [`${count(times)} ${KINDS[kind][times === 1 ? 0 : 1]}`];
    });
  }
}
