import type { LeatherName, Patch, Vec2 } from '../../../core/index.ts';
import type { ShapeName } from './hideShape.ts';

/** What the job has of one piece of leather. */
export interface HideInJob {
  readonly leather: LeatherName;
  readonly isWritten: boolean;
  readonly defects: readonly (readonly Vec2[])[];
}

const pathOf = ({ leather }: HideInJob) => `hides.${leather}` as const;

const begun = (hide: HideInJob): Patch[] => (hide.isWritten ? [] : [{ path: pathOf(hide), value: {} }]);

const defectsPatch = (hide: HideInJob, defects: readonly (readonly Vec2[])[]): Patch => ({
  path: `${pathOf(hide)}.defects`,
  value: defects.length === 0 ? undefined : defects,
});

/** Puts a shape into the job, or with null takes it out; a defect past the last is a new one. */
export function shapePatches(hide: HideInJob, name: ShapeName, corners: readonly Vec2[] | null): readonly Patch[] {
  if (name === 'outline') return [...begun(hide), { path: `${pathOf(hide)}.outline`, value: corners ?? undefined }];
  const { defects } = hide;
  const at = typeof name === 'number' ? name : defects.length;
  return [
    ...begun(hide),
    defectsPatch(hide, [...defects.slice(0, at), ...(corners === null ? [] : [corners]), ...defects.slice(at + 1)]),
  ];
}

/** Puts an outline and all its defects into the job at once. */
export const wholePatches = (
  hide: HideInJob,
  outline: readonly Vec2[],
  defects: readonly (readonly Vec2[])[],
): readonly Patch[] => [...shapePatches(hide, 'outline', outline), defectsPatch(hide, defects)];

/** Lays the backbone along the way from one point to another, in whole degrees from the x axis. */
export function backbonePatches(hide: HideInJob, [[x, y], [right, up]]: readonly [Vec2, Vec2]): readonly Patch[] {
  const degrees = (Math.atan2(up - y, right - x) * 180) / Math.PI;
  return [...begun(hide), { path: `${pathOf(hide)}.backbone_deg`, value: Math.round((degrees + 360) % 360) }];
}
