/** A grid of places on a level plane over the sheet: its first place, its spacing, and how many. */
export interface LevelGrid {
  readonly left: number;
  readonly low: number;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}
