import { brokenLines } from '../brokenLines.ts';
import type { Block } from './block.ts';

/** Line step, space before and letter height, as multiples of the body height. */
const LEADING = 1.4;
const BEFORE = { heading: 1.5, item: 0.65, text: 0.1, caution: 0.25 } as const;
const SIZE = { heading: 1.3, item: 1.05, text: 1, caution: 1 } as const;
/** Left edge of a block's words, from the column's. */
const INDENT = { heading: 0, item: 0, text: 1.2, caution: 2.4 } as const;

/** A block set in lines, with its place on a page: `top` and `left` in mm from the page's upper left corner. */
export interface SetBlock {
  readonly block: Block;
  readonly lines: readonly string[];
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** Height of the letters, mm. */
  readonly size: number;
}

export interface Columns {
  readonly left: number;
  readonly width: number;
  readonly between: number;
  readonly count: number;
  readonly bottom: number;
  /** Where columns start on the first page and on the others, mm from above. */
  readonly firstTop: number;
  readonly top: number;
}

/** Width of words at a letter height, mm. */
export type Measure = (words: string, size: number, isBold: boolean) => number;

const isBold = ({ kind }: Block): boolean => kind === 'heading' || kind === 'item';

/**
 * Sets blocks in columns, top to bottom and left to right, page after page; the columns of a section end at the same
 * height. An item stays with all under it and a heading with its first item, where a column can hold them.
 * @param body height of the text, mm
 */
export function setInColumns(blocks: readonly Block[], columns: Columns, body: number, measure: Measure): SetBlock[] {
  const set: SetBlock[] = [];
  for (const section of sections(blocks)) {
    const page = set.length === 0 ? 0 : set.at(-1)!.page + 1;
    set.push(
      ...balanced(
        section.map((block) => inLines(block, columns.width, body, measure)),
        columns,
        page,
      ),
    );
  }
  return set;
}

/** Blocks from one heading that starts a page to the next. */
export function sections(blocks: readonly Block[]): Block[][] {
  const found: Block[][] = [];
  for (const block of blocks) {
    if (found.length === 0 || (block.kind === 'heading' && block.startsPage)) found.push([]);
    found.at(-1)!.push(block);
  }
  return found;
}

type Lined = ReturnType<typeof inLines>;

function inLines(block: Block, room: number, body: number, measure: Measure) {
  const size = SIZE[block.kind] * body;
  const indent = INDENT[block.kind] * body;
  const width = room - indent;
  const aside = block.kind === 'item' && block.aside !== '' ? measure(block.aside, size, false) + body : 0;
  const lines = brokenLines(block.text, width - aside, (line) => measure(line, size, isBold(block)));
  return {
    block,
    lines,
    size,
    indent,
    width,
    before: BEFORE[block.kind] * body,
    height: lines.length * lineStep(size),
  };
}

/** Bisection steps of the column height: to under 0.1 mm. */
const HALVINGS = 12;

/** The section in the shortest columns that take no more pages than full ones. */
function balanced(section: readonly Lined[], columns: Columns, page: number): SetBlock[] {
  let best = flow(section, columns, columns.bottom, page);
  const last = best.at(-1)!.page;
  let [short, long] = [page === 0 ? columns.firstTop : columns.top, columns.bottom];
  for (let i = 0; i < HALVINGS; i++) {
    const bottom = (short + long) / 2;
    const set = flow(section, columns, bottom, page);
    const fits =
      set.at(-1)!.page <= last && set.every(({ top, lines, size }) => top + lines.length * lineStep(size) <= bottom);
    if (fits) [best, long] = [set, bottom];
    else short = bottom;
  }
  return best;
}

function flow(section: readonly Lined[], columns: Columns, bottom: number, firstPage: number): SetBlock[] {
  let [page, column] = [firstPage, 0];
  const start = (): number => (page === 0 ? columns.firstTop : columns.top);
  let top = start();
  const blocks = section.map(({ block }) => block);
  return section.map(({ block, lines, size, indent, width, before, height }, i) => {
    const group = section.slice(i, endOfGroup(blocks, i)).reduce((sum, each) => sum + each.before + each.height, 0);
    const isLeading = isBold(block) && group <= columns.bottom - columns.top;
    if (top + (isLeading ? group : before + height) > bottom && top > start()) {
      column++;
      if (column === columns.count) [page, column] = [page + 1, 0];
      top = start();
    }
    const at = top === start() ? top : top + before;
    top = at + height;
    return {
      block,
      lines,
      page,
      left: columns.left + column * (columns.width + columns.between) + indent,
      top: at,
      width,
      size,
    };
  });
}

/** End of the group that starts at a block: the next item or heading; a heading's group includes its first item. */
function endOfGroup(blocks: readonly Block[], from: number): number {
  let end = from + 1;
  if (blocks[from]!.kind === 'heading' && blocks[end]?.kind === 'item') end++;
  while (end < blocks.length && !isBold(blocks[end]!)) end++;
  return end;
}

export const lineStep = (size: number): number => size * LEADING;
