/** Films that can be taken, with their lengths in seconds. */
export const FILMS = [
  { id: 'turn', title: 'One turn', seconds: [8, 16, 4] },
  { id: 'making', title: 'The making', seconds: [45, 90, 20] },
] as const;

export type FilmId = (typeof FILMS)[number]['id'];

/** Sizes of a film, pixels. */
export const FILM_SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 640, height: 360 },
] as const;
