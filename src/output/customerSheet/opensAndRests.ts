import {
  type CoverDesign,
  leastWrap,
  type Printer,
  type Report,
  type ResultOrigin,
  standsOpen,
} from '../../core/index.ts';
import { leastOver } from './leastOver.ts';

/** How the cover closes, opens and comes to rest by itself, in plain words. */
export function opensAndRests(design: CoverDesign, report: Report, say: Printer): readonly string[] {
  const { fits, job } = design;
  const { staysOpen } = fits[leastWrap(design)];
  if (staysOpen === null) return ['It neither closes nor opens, for the boards do not go in yet.'];
  const opensTo = leastOver((point) => fits[point].opensTo ?? 0);
  return [
    staysOpen > 0
      ? `It does not close round the book: it stays open ${say.angle(staysOpen)}.`
      : 'It closes fully round the book.',
    opensTo >= Math.PI
      ? 'The book opens flat in it, so that it can be read on a table.'
      : `The book opens ${say.angle(opensTo, 'down')} in it, not quite flat.`,
    ...rests(report, say),
    ...(job.construction.strap === null ? [] : [`The ${job.construction.strap.shape} holds it shut.`]),
  ];
}

/** Why it is not said how the cover rests. */
const UNSAID: Readonly<Record<ResultOrigin, string>> = {
  'quick model': 'is not worked out here',
  'springy model': 'could not be worked out',
  'being worked out': 'is being worked out',
  'not known': 'could not be worked out',
};

type RestState = 'newCover' | 'pressedDay';

/** How a cover lies when it is let go, new and after a day under weights, over the range of its leather; null where it is not known. */
export function standing({ fit }: Report, say: Printer): Readonly<Record<RestState, string>> | null {
  const strips = [fit.thin.strip, fit.nominal.strip, fit.thick.strip];
  const stands = (state: RestState): string | null => {
    const found = strips.flatMap((strip) => strip?.rest[state] ?? []);
    if (found.length < strips.length) return null;
    const radians = (degrees: number): number => (degrees * Math.PI) / 180;
    return standsOpen(
      radians(Math.min(...found.map(({ leastOpening_deg: least }) => least ?? 0))),
      radians(Math.max(...found.map(({ mostOpening_deg: most }) => most ?? 180))),
      say.angle,
    );
  };
  const [newCover, pressedDay] = [stands('newCover'), stands('pressedDay')];
  return newCover === null || pressedDay === null ? null : { newCover, pressedDay };
}

/** How it lies when it is let go: a range, for leather that was not tested. */
function rests(report: Report, say: Printer): string[] {
  const { fit, origin } = report;
  const isSolved = [fit.thin.strip, fit.nominal.strip, fit.thick.strip].every((strip) => strip !== undefined);
  if (!isSolved) return [`How far it springs open when let go ${UNSAID[origin]}.`];
  const stands = standing(report, say);
  if (stands === null) return [`How far it springs open when let go ${UNSAID['not known']}.`];
  return [
    `Let go, the new cover ${stands.newCover}; after a day under weights it ${stands.pressedDay}.`,
    'Leather differs: that is the range to expect.',
  ];
}
