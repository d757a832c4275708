/** The parts of the workbench by what they are about, in the order in which a cover is made. */
export const WORKBENCH_GROUPS = [
  {
    title: 'Pieces',
    parts: [
      { id: 'construction', title: 'Construction' },
      { id: 'tooling', title: 'Tooling' },
      { id: 'template', title: 'Template' },
      { id: 'machine', title: 'Machines' },
      { id: 'drafting', title: 'Drafting sheet' },
      { id: 'trial', title: 'Card trial' },
    ],
  },
  {
    title: 'Leather',
    parts: [
      { id: 'leather', title: 'Leather owned' },
      { id: 'supplies', title: 'Supplies' },
    ],
  },
  {
    title: 'Work',
    parts: [
      { id: 'work', title: 'Order of work' },
      { id: 'outcome', title: 'How it came out' },
      { id: 'quote', title: 'Quote' },
    ],
  },
] as const;

export const WORKBENCH_PARTS = WORKBENCH_GROUPS.flatMap(({ parts }) => [...parts]);

export type WorkbenchPartId = (typeof WORKBENCH_PARTS)[number]['id'];
