/**
 * Stretch at which leather breaks in a tensile test (ISO 3376), as a share of its length: nearly all bear `least`, none is
 * expected to bear `most`. The grain may crack before. Assumptions, for of the sources only limits for buyers were read:
 *
 * - most: fancy leather may stretch by at most 50 % at break vegetable tanned and 75 % chrome tanned ("Test requirement for
 *   fancy and fine leather", 2010, a trade journal's page that names no standard), furniture leather by 80 %;
 * - least: firm sole, harness and belting leathers, from memory. Measured stretch of vegetable tanned harness leather is in
 *   Bowker and Churchill, Technologic Paper 160 of the Bureau of Standards, 1920, whose table was not read.
 */
export const BREAKING_STRAIN = Object.freeze({ least: 0.15, most: 0.75 });

/**
 * How many times the stretch that dry leather bears it is taken to bear cased, that is damp through. An assumption without a
 * source: water softens the fibres; by how much this leather gains only an offcut can show.
 */
export const DAMP_GAIN = 1.25;
