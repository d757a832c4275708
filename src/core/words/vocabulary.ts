import { FIELD_TERMS } from './fieldTerms.ts';
import type { Term } from './term.ts';

/**
 * Every term that a maker reads, by the word for it. Screen, sheets, messages and command line take names from here through
 * `titled`, so that a word is changed in one place. Sentences are written where they are said.
 */
export const VOCABULARY = {
  ...FIELD_TERMS,
  backbone: {
    meaning: 'The hide’s line along the back of the animal; leather stretches least along it.',
    not: ['along the backbone', 'across the backbone', 'backbone of the book', 'backbone line'],
    shown: 'pattern.backbone',
  },
  'board covered': {
    meaning: 'How much of a board a pocket covers, from the fore-edge toward the spine.',
    not: ['coverage', 'pocket share'],
    shown: 'edge.pocket',
  },
  'bend ratio': {
    meaning: 'Inside radius of a pressed fold, in thicknesses of its leather.',
    not: ['fold ratio', 'radius ratio'],
    shown: 'bend.radius',
  },
  'bench sheet': {
    meaning: 'The printed sheet for the workbench: sizes, seam, supplies and the order of work.',
    not: ['work sheet', 'job sheet'],
  },
  board: {
    meaning: 'One of the two stiff covers of the book; of a paperback, its cover.',
    plural: 'boards',
    not: ['cover board', 'book cover'],
    shown: 'spine.boards',
  },
  callipers: {
    meaning: 'A gauge whose jaws close on what they measure, good to 0.1 mm on leather.',
    not: ['caliper', 'calipers', 'calliper'],
  },
  card: {
    meaning: 'Stiff paper from which a cover is cut and tried before leather.',
    not: ['card stock', 'cardboard'],
  },
  'card trial': {
    meaning: 'The cover cut from card and tried on the book: its gaps correct the measures.',
    not: ['mock-up', 'mockup', 'trial in card'],
  },
  casing: {
    meaning: 'Wetting leather through, so that it folds sharply and keeps its creases; it shrinks a little.',
    not: ['dampening'],
    shown: 'bend.thickness',
  },
  chance: {
    meaning: 'Of 100 covers made like this one, how many would close, or fit.',
    plural: 'chances',
    not: ['probability', 'odds'],
    shown: 'chance.fits',
  },
  'clear part': {
    meaning: 'The part of a flat face within its margins: tooling there stays off folds, edges and holes.',
    not: ['tooling area', 'safe area', 'live area'],
  },
  crease: {
    meaning: 'A fold that stays; how well it stays decides whether the cover lies shut.',
    plural: 'creases',
    not: ['crease set'],
    shown: 'bend.radius',
  },
  doubt: {
    meaning: 'How far a figure may be off; usual values are assumed where none is given.',
    plural: 'doubts',
    not: ['uncertainty', 'uncertainties', 'error bar'],
    shown: 'chance.spread',
  },
  ease: {
    meaning: 'The gap asked for at an edge, left at the thick end of the leather.',
    not: ['gap wished', 'wished gap', 'gap asked for here'],
    shown: 'edge.gap',
  },
  'flesh side': {
    meaning: 'The side of the leather that was toward the animal; it lies inside the cover.',
    not: ['rough side', 'suede side'],
    shown: 'bend.flesh',
  },
  'fore-edge': {
    meaning: 'The edge opposite the spine, where the pages open.',
    plural: 'fore-edges',
    not: ['fore edge', 'foredge'],
    shown: 'spine.foreEdges',
  },
  gap: {
    meaning: 'From a board edge to its stop: how much larger than needed the cover is there.',
    plural: 'gaps',
    not: ['slack', 'spare room', 'wiggle room'],
    shown: 'edge.gap',
  },
  'give or take': {
    meaning: 'The distance that 19 in 20 values are within.',
    not: ['standard uncertainty', 'plus or minus', 'strays', 'stray'],
    shown: 'chance.spread',
  },
  'grain side': {
    meaning: 'The smooth side of the leather, which is outside when the cover is made.',
    not: ['hair side', 'smooth face'],
    shown: 'bend.grain',
  },
  'half round': {
    meaning: 'From the middle of the spine to one fore-edge, as the book is rolled on card.',
    not: ['rolled half'],
    shown: 'spine.wrap',
  },
  head: { meaning: 'The top edge of book and cover.', not: ['top end'], shown: 'pattern.head' },
  hold: {
    meaning: 'How much of a board stays in its pocket.',
    not: ['holding depth', 'held depth'],
    shown: 'edge.hold',
  },
  iron: {
    meaning: 'The tool that pricks, slits or punches the holes of a seam: pricking iron, lacing chisel or drive punch.',
    plural: 'irons',
    not: ['pronging tool', 'hole tool'],
  },
  joint: {
    meaning: 'The groove beside the spine at which a board turns.',
    plural: 'joints',
    not: ['gutter', 'hinge line'],
    shown: 'spine.joints',
  },
  'K factor': {
    meaning: 'Where a bend keeps its length: share of the thickness, counted from the inside.',
    not: ['neutral fraction', 'neutral share', 'neutral line'],
    shown: 'bend.neutral',
  },
  kerf: { meaning: 'Width of the cut that a laser burns away.', not: ['cut width of the laser'] },
  lining: {
    meaning: 'A thinner leather inside the outside, whole or only at the spine.',
    not: ['liner', 'inlay'],
    shown: 'edge.lining',
  },
  'local rules': { meaning: 'The law and the rules of your house on fire, fumes and waste.', not: ['local codes'] },
  'marked sheet': {
    meaning: 'The printed pages with black squares by which a photograph of what lies on them is measured.',
    plural: 'marked sheets',
    not: ['marker sheet', 'calibration sheet', 'target sheet'],
  },
  middle: {
    meaning: 'The leather half way between the thin and the thick end of its weight range.',
    not: ['nominal'],
    shown: 'range.middle',
  },
  offcut: {
    meaning: 'A waste piece of the same leather, for a test.',
    plural: 'offcuts',
    not: ['strip of leather', 'strip of this leather', 'test strip', 'leather strip'],
  },
  outside: {
    meaning: 'The large piece of leather, round the whole book.',
    not: ['outer piece', 'outer leather', 'shell'],
    shown: 'edge.outside',
  },
  overrun: {
    meaning: 'How far a board edge would run past its stop: the cover is too small there.',
    plural: 'overruns',
    not: ['negative gap', 'underrun'],
    shown: 'edge.stop',
  },
  'paper strip': {
    meaning: 'Paper drawn tight round the closed book from fore-edge to fore-edge, then measured flat.',
    not: ['closed wrap', 'strip round', 'tape or paper strip'],
    shown: 'spine.wrap',
  },
  pocket: {
    meaning: 'The leather inside the cover that a board is slipped into.',
    plural: 'pockets',
    not: ['sleeve'],
    shown: 'edge.pocket',
  },
  'pocket mouth': {
    meaning: 'The open edge of a pocket, toward the spine.',
    plural: 'pocket mouths',
    not: ['pocket opening'],
    shown: 'edge.hold',
  },
  'quick model': {
    meaning: 'Sizes by the leather drawn tight over the book; it decides the verdict.',
    not: ['closed form'],
    shown: 'spine.wrap',
  },
  'quick reckoning': {
    meaning: 'Chances from how much each doubt moves each gap; the verdict goes by it.',
    not: ['first order', 'first-order'],
    shown: 'chance.spread',
  },
  relief: {
    meaning: 'How deep the tooling is pressed into the leather, and how it looks there.',
    not: ['embossing', 'bump'],
  },
  seam: {
    meaning: 'The stitches or the lacing that join outside and pockets.',
    plural: 'seams',
    not: ['stitching line'],
    shown: 'pattern.seam',
  },
  'seam to stop': {
    meaning: 'From the seam to where a board edge stops, as the pocket curves up over it.',
    not: ['curve over the board edge'],
    shown: 'edge.stop',
  },
  skiving: {
    meaning: 'Thinning leather from the flesh side, where it is folded.',
    not: ['paring', 'shaving down'],
    shown: 'bend.flesh',
  },
  'spare wrap': {
    meaning: 'Wrap beyond what the closed book needs: the gaps at both fore-edges together.',
    not: ['spare length', 'surplus', 'excess wrap'],
    shown: 'spine.wrap',
  },
  spine: {
    meaning: 'The side of the book where its pages are bound.',
    not: ['rounded back', 'flat back', 'over the back', 'edges of the back', 'back of the book'],
    shown: 'spine.spine',
  },
  'springy model': {
    meaning: 'The leather as a spring that bends, by contact and friction; it informs and decides nothing.',
    not: ['elastic strip', 'elastic model', 'elastica'],
    shown: 'spine.wrap',
  },
  'squash of the pages': {
    meaning: 'How far the pockets press the pages together at the fore-edge.',
    not: ['page give', 'give of the pages'],
    shown: 'edge.squash',
  },
  'staying shut': {
    meaning: 'How far the cover opens by itself when it is let go.',
    not: ['springback', 'spring-back'],
    shown: 'ajar.wrap',
  },
  stop: {
    meaning: 'Where a board edge comes to rest, as the pocket curves up to the seam over it.',
    plural: 'stops',
    not: ['seat', 'seats', 'seated', 'seating'],
    shown: 'edge.stop',
  },
  strip: {
    meaning: 'The cover laid out flat, from cut edge to cut edge, by its parts.',
    plural: 'strips',
    not: ['developed strip', 'stretch of the strip', 'choose a stretch'],
  },
  swell: {
    meaning: 'Thickness that sewing and folded leaves add at the spine.',
    not: ['spine bulge'],
    shown: 'spine.spine',
  },
  tail: {
    meaning: 'The bottom edge of book and cover.',
    not: ['bottom end', 'foot of the book'],
    shown: 'pattern.tail',
  },
  'thick end': {
    meaning: 'The thickest place of the leather, by which cut sizes are made.',
    not: ['heaviest leather', 'thickest leather', 'heavy end'],
    shown: 'range.thick',
  },
  'thin end': {
    meaning: 'The thinnest place of the leather, where gaps are largest.',
    not: ['lightest leather', 'thinnest leather', 'light end'],
    shown: 'range.thin',
  },
  tooling: {
    meaning: 'Lines, letters and pictures pressed or cut into the grain side of the finished cover.',
    not: ['decoration', 'artwork'],
  },
  tracing: {
    meaning: 'The design in true size on thin paper, laid on the damp leather and gone over with a stylus.',
    not: ['transfer sheet', 'stencil'],
  },
  trials: {
    meaning: '2,000 covers worked out, each with every figure a little off.',
    not: ['Monte Carlo', 'simulation', 'simulated'],
    shown: 'chance.spread',
  },
  'turned end': {
    meaning: 'An end of the outside folded in to make the pocket, with no seam at the fore-edge.',
    plural: 'turned ends',
    not: ['turn-in', 'turned-in end', 'folded end'],
    shown: 'pattern.ends',
  },
  tannage: {
    meaning: 'How the hide was made into leather. Leathers of one tannage teach each other.',
    not: ['tanning method', 'tan type'],
  },
  usual: {
    meaning: 'What is taken where a field is empty and no better value is known.',
    not: ['default', 'defaults', 'by default'],
  },
  version: { meaning: 'One state of a job, or of this program.', plural: 'versions', not: ['edition', 'editions'] },
  'weight range': {
    meaning: 'From the thinnest to the thickest place of the leather, as it is sold.',
    not: ['range of weights', 'thickness range'],
    shown: 'range.all',
  },
  workbench: {
    meaning: 'Where the cover is made: its template, leather, supplies, price and order of work.',
    not: ['on the bench', 'at the bench', 'to the bench', 'rest of the bench', 'the bench could'],
  },
  'worked out': {
    meaning: 'Computed by the tool, where a field is left empty.',
    not: ['decided', 'decided by the tool', 'the tool decides'],
  },
  wrap: {
    meaning: 'Length of leather from fore-edge round the spine to fore-edge.',
    not: ['girth', 'way round the book', 'path over the book'],
    shown: 'spine.wrap',
  },
  'your leathers': {
    meaning: 'The leathers that you own, each with what is left, its tests and the covers made of it.',
    not: ['leather stock', 'leather store', 'leather library', 'inventory'],
  },
} as const satisfies Readonly<Record<string, Term>>;

/** A term, by the word for it. */
export type Word = keyof typeof VOCABULARY;

/** The entry of a term. */
export const termOf = (word: Word): Term => VOCABULARY[word];
