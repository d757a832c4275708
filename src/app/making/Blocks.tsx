import type { Block } from '../../output/benchSheet/block.ts';

/** The blocks of a bench sheet on screen, each item with all that belongs to it. */
export function Blocks({ blocks }: { readonly blocks: readonly Block[] }) {
  return (
    <ul className="sheet-items">
      {items(blocks).map((item) => (
        <li key={item.map(({ text }) => text).join(' ')}>
          {item.map((block) =>
            block.kind === 'item' ? (
              <h4 key={block.text}>
                {block.text} <span>{block.aside}</span>
              </h4>
            ) : (
              <p key={block.text} className={block.kind === 'caution' ? 'caution' : undefined}>
                {block.text}
              </p>
            ),
          )}
        </li>
      ))}
    </ul>
  );
}

/** Blocks in groups that each begin with an item; headings are left out. */
function items(blocks: readonly Block[]): Block[][] {
  const groups: Block[][] = [];
  for (const block of blocks) {
    if (block.kind === 'heading') continue;
    if (block.kind === 'item' || groups.length === 0) groups.push([]);
    groups.at(-1)!.push(block);
  }
  return groups;
}
