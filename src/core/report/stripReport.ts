import type { ElasticFit } from '../fold/elastic/elasticFit.ts';
import type { ReleasedOpening } from '../fold/elastic/releasedOpening.ts';
import type { SeatStrip } from '../fold/elastic/seatStrip.ts';
import { degreesFromRadians, radians } from '../units/radians.ts';
import type { StripReport } from './reportSchema.ts';

/** Writes the elastic strip's results up; a release that was not solved is null. */
export function stripReport({ closed, creased, newCover, seats, stretch }: ElasticFit): StripReport {
  const opening = ({ status, opening: angle }: ReleasedOpening): number | null =>
    status === 'converged' ? degreesFromRadians(radians(angle)) : null;
  const force = ({ status, closingForce }: ReleasedOpening): number | null =>
    status === 'converged' ? closingForce : null;
  const section = Array.from({ length: closed.section.length / 2 }, (_, i): [number, number] => [
    closed.section[2 * i]!,
    closed.section[2 * i + 1]!,
  ]);
  return {
    status: closed.status,
    iterations: closed.iterations,
    residual: closed.residual,
    contactGap_mm: closed.contactGap,
    spineBow_mm: closed.spineBow,
    faceBulge_mm: closed.faceBulge,
    releasedOpening_deg: opening(creased),
    newOpening_deg: opening(newCover),
    closingForce_N: force(creased),
    newClosingForce_N: force(newCover),
    insideRadius_mm: closed.insideRadius,
    seats: { foreEdge: seatReport(seats.foreEdge), headTail: seatReport(seats.headTail) },
    stretch: stretch && {
      short_mm: stretch.short,
      pull_N: stretch.pull,
      most_mm: stretch.most,
      takes: stretch.takes,
    },
    section_mm: section,
  };
}

const seatReport = (seat: SeatStrip | null): StripReport['seats']['headTail'] =>
  seat && {
    status: seat.status,
    closedForm_mm: seat.closed.needed,
    strip_mm: seat.needed,
    press_N_per_mm: seat.press,
  };
