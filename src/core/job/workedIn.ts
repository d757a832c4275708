import { isRecord, patched, valueAt } from './jobDocument.ts';

/**
 * Says of a job document that names no unit which one it is worked in.
 * @param value anything read from JSON; what is no job, or names its own unit, comes back as it is
 * @param units null to leave every document as it is
 */
export const workedIn = (value: unknown, units: 'mm' | 'in' | null): unknown =>
  units === null || !isRecord(value) || valueAt(value, 'work.units') !== undefined
    ? value
    : patched(value, [{ path: 'work.units', value: units }]);
