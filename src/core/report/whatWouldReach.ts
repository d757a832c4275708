import type { Report } from './reportSchema.ts';

/** What would help where no size reaches the wished chance; '' where one does. */
export const whatWouldReach = ({ doubt, checks }: Pick<Report, 'doubt' | 'checks'>): string =>
  doubt.reaches ? '' : (checks.find(({ id }) => id === 'together')?.remedy ?? '');
