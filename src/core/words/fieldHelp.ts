import { FIELD_TERMS } from './fieldTerms.ts';

/**
 * What the help under each field of the job says, by path; `*` stands for any leather, lace style, input in doubt or place of
 * a list. Kept apart from the schema, which the page needs at once and these only where a field is shown.
 */
const FIELD_HELP: Readonly<Record<string, string>> = {
  'work.cutStep_mm': 'Cut sizes are multiples of this; 0 for none.',
  'book.width_mm': 'From the spine edge of the board to the fore-edge, over the board.',
  'book.height_mm': 'Head to tail, over the board.',
  'book.thickness_mm': 'Over both boards at the spine, book closed and not squeezed.',
  'book.foreEdgeThickness_mm': 'Over both boards at the fore-edge. Left empty: as at the spine.',
  'book.boardThickness_mm': 'One board; of a paperback, its cover.',
  'book.square_mm': FIELD_TERMS.square.meaning,
  'book.spine.rise_mm': FIELD_TERMS.rise.meaning,
  'book.cornerRadius_mm': 'Rounding of the edge where board line and spine meet, seen across the spine.',
  'book.jointDip_mm': FIELD_TERMS['extra length at the joints'].meaning,
  'book.foldBack_deg': FIELD_TERMS['bend back'].meaning,
  'book.pageGive':
    'How far the pockets squash the pages at the fore-edge, as a share of the thickness of the pages. Assumption.',
  'book.measured.closedWrap_mm':
    'Paper strip or tape, drawn round the closed book from the front fore-edge over the spine to the back one.',
  'book.measured.rolledHalf_mm': 'Book rolled on card: from the middle of the spine to one fore-edge.',
  'book.measured.openFlatWidth_mm': 'Fore-edge to fore-edge over the outside of the book lying open.',
  'book.measured.error_mm': 'How far any one measure may be off, either way.',
  'leather.*.min_mm': 'Thinnest place of the weight range; 1 oz = 0.396875 mm.',
  'leather.*.max_mm': 'Thickest place of the weight range.',
  'leather.*.neutral':
    'Share of the thickness, counted from the inside of a bend, at which the leather keeps its length. 2/pi is "one thickness a fold".',
  'leather.*.bendRatio':
    'Inside radius over thickness when pressed along a seam: 0.2 pressed or damp, about 0.5 firm and dry. Assumption.',
  'leather.*.modulus_MPa': "Young's modulus. Assumption; alters forces only.",
  'leather.*.creaseSet': '0 %: the leather springs back whole; 100 %: it stays as it was closed. Assumption.',
  'leather.*.density_kg_m3': 'For how far its weight helps to hold the book shut. Assumption.',
  'leather.*.friction':
    'Coefficient of friction of the leather on the book, about 0.25 to 0.55. It decides how far spare wrap moves by itself. Assumption.',
  'leather.*.foldThickness_mm': 'Thickness left where the leather is skived at the folds.',
  'leather.*.strainLimit':
    'Stretch of the grain side that an offcut of this leather bore in a fold without cracking. Leave it empty where none was tested.',
  'making.state': 'What is done to the leather once it is cut.',
  'making.changeAlong':
    'Growth of the cut leather along the hide’s backbone, head to tail; minus where it shrinks. Usual: 0 worked dry, −1 % cased, dyed or wet-formed. Assumption: test an offcut.',
  'making.changeAcross':
    'Growth of the cut leather across the hide’s backbone, fore-edge to fore-edge; minus where it shrinks. Usual: 0 worked dry, −1 % cased, dyed or wet-formed. Assumption: test an offcut.',
  'making.hand.margin_mm':
    'How much wider than drawn your edge margins come out, at one edge; minus where narrower. 0 until finished covers have shown it.',
  'making.hand.cutting_mm':
    'How much larger than drawn your pieces come out, in one dimension; minus where smaller. 0 until finished covers have shown it.',
  'outcome.front_mm':
    'Gap at the front fore-edge of the finished cover, the book pushed home against its stop on the other side.',
  'outcome.back_mm': 'Gap at the back fore-edge of the finished cover, read in the same way.',
  'outcome.head_mm': 'Gap at the head of the finished cover.',
  'outcome.tail_mm': 'Gap at the tail of the finished cover.',
  'outcome.opening_deg': 'How far the finished cover stays open when it is pressed shut; 0 where it closes.',
  'outcome.weekLater_deg': 'How far the cover stands open by itself a week after it was made.',
  'outcome.error_mm': 'How far each gap may be off: 1 reading in 22 is further off.',
  'seam.edgeMargin_mm': FIELD_TERMS['edge margin'].meaning,
  'seam.pitch_mm': FIELD_TERMS.pitch.meaning,
  'seam.iron.pitch_mm':
    'From tooth to tooth. Sold by stitches per inch it is not exact: prick ten strides, measure them and divide by ten.',
  'seam.iron.tooth_mm': 'Width of one tooth, or diameter of a round hole.',
  'seam.iron.angle_deg':
    'Of a tooth to the seam line. About 45 for a pricking iron, 0 for a flat chisel. Common practice, no source.',
  'seam.cornerRadius_mm': 'Rounding of the corners of the cut pieces.',
  'pockets.depth_mm':
    'From the fore-edge seam (turned end: from the turn) to the mouth, measured on the assembled cover.',
  'pockets.share':
    'How much of the board a pocket covers, from the fore-edge. Two thirds to three quarters are common practice, half is taken too. The tool covers more where the hold asks for it, less where the boards would not go in.',
  'pockets.hold_mm': 'Least length of board that must stay in its pocket.',
  'ease.foreEdge_mm':
    'Gap to leave here at the thick end of the leather. Leave empty: it is worked out, so that the cover fits as surely as wished.',
  'ease.head_mm':
    'Gap to leave here at the thick end of the leather. Leave empty: it is worked out, so that the cover fits as surely as wished.',
  'ease.tail_mm':
    'Gap to leave here at the thick end of the leather. Leave empty: it is worked out, so that the cover fits as surely as wished.',
  'ease.share': 'Covers that are to fit: 95 % is 95 of 100. An ease left empty is worked out for it.',
  'loosest.foreEdge_mm':
    'A larger gap here is too loose, at the thin end of the leather too. Common practice, no source.',
  'loosest.head_mm': 'A larger gap here is too loose, at the thin end of the leather too. Common practice, no source.',
  'loosest.tail_mm': 'A larger gap here is too loose, at the thin end of the leather too. Common practice, no source.',
  'pattern.outsideWidth_mm': 'Leave empty: the tool works it out. Type a width to fix it.',
  'pattern.outsideHeight_mm': 'Leave empty: the tool works it out. Type a height to fix it.',
  'pattern.rounding_mm': 'Cut sizes are rounded up to a multiple of this; 0 for none.',
  'construction.corners':
    'Of the outside, its full lining and the pockets; their size is seam.cornerRadius_mm. Left empty: rounded where that is over 0.',
  'construction.mouthCurve':
    'How deep a curved mouth is scooped in its middle, as a share of the pocket depth. Never over a quarter of the height.',
  'construction.lining': 'What the lining covers, where leather.lining gives one.',
  'construction.hole_mm': 'Diameter of a stitching hole as drawn and cut.',
  'construction.slitWidth_mm': 'Length of a lacing slit: the width of the lace. Assumption.',
  'construction.slitAngle_deg': 'Of a lacing slit to the seam line. Usual: 45 for whip, 0 for the others.',
  'construction.strap.width_mm': 'Cut width of the closure strap or flap. Assumption.',
  'construction.strap.anchor_mm':
    'How far the strap lies on the back cover, from the cut edge inward, where it is sewn down. Assumption.',
  'construction.strap.reach_mm': 'From the cut edge of the front cover to the fastening. Assumption.',
  'construction.strap.end_mm': 'Strap or flap beyond the fastening. Assumption.',
  'construction.strap.shape': 'A strap is narrow. A flap may be as wide as the book is high.',
  'construction.strap.fastening': 'How strap or flap is held on the front cover.',
  'finish.*.colour': 'Colour of the grain side, as a picture shows it; it names no dye.',
  'finish.*.surface': 'How much light the grain side throws back.',
  'finish.edge': 'Raw edges are left as cut; burnished and painted ones are bevelled first.',
  'finish.edgeColour': 'Colour of the edge paint.',
  'finish.metal': 'Of the fastening.',
  'finish.thread_mm':
    'About a fifth of the pitch, common practice. It is for the picture: what is bought is counted by length.',
  'construction.penLoop.pen_mm': 'Thickness of the pen.',
  'construction.penLoop.ease_mm': 'Room round the pen, on its diameter. Assumption.',
  'construction.penLoop.width_mm': 'Length of the loop along the pen. Assumption.',
  'construction.ribbon.count': 'How many.',
  'construction.ribbon.fixed_mm': 'Length fastened under the lining at the head. Assumption.',
  'construction.ribbon.tail_mm': 'Length that hangs out beyond the corner of the page.',
  'tooling.margins.head_mm': 'From the board edge.',
  'tooling.margins.tail_mm': 'From the board edge.',
  'tooling.margins.foreEdge_mm': 'From the board edge.',
  'tooling.margins.spine_mm': 'From the spine fold; on a pocket from its mouth.',
  'tooling.margins.narrow_mm': 'From their folds and edges.',
  'tooling.depth_mm': 'Pressed into the leather. Assumption.',
  'tooling.line_mm': 'Of the tool. Assumption.',
  'tooling.designs.*.x_mm': 'From the centre line.',
  'tooling.designs.*.y_mm': 'From the centre line.',
  'tooling.designs.*.turn_deg': 'Counterclockwise.',
  'tooling.designs.*.repeat.columns': 'Copies side by side.',
  'tooling.designs.*.repeat.rows': 'Copies one over the other.',
  'tooling.designs.*.repeat.stepX_mm': 'Between centres.',
  'tooling.designs.*.repeat.stepY_mm': 'Between centres.',
  'tooling.designs.*.inset_mm': 'From the margin of the area to the outer line.',
  'tooling.designs.*.gap_mm': 'From line to line of a double border.',
  'tooling.designs.*.corner_mm': 'Radius, or side of the notch, of the outer line.',
  'tooling.designs.*.height_mm': 'Of a capital.',
  'tooling.designs.*.width_mm': 'Before it is turned.',
  'order.clip_mm': 'Cut off along both edges, just before the seam. Empty: not clipped.',
  'mockup.card.thickness_mm': 'About 0.5 mm at 400 g/m2. Assumption.',
  'mockup.card.neutral':
    'Share of the thickness, counted from the inside of a fold, at which the card keeps its length. Scored card folds about its middle. Assumption.',
  'mockup.card.bendRatio': 'Inside radius of a scored fold over the thickness. Assumption.',
  'mockup.card.cutWidth_mm': 'As the card was cut. Left empty: as the tool sizes it.',
  'mockup.card.cutHeight_mm': 'As the card was cut. Left empty: as the tool sizes it.',
  'mockup.readings.front_mm': 'From the board edge to where it stops, in the card; an overrun is negative.',
  'mockup.readings.back_mm': 'From the board edge to where it stops, in the card; an overrun is negative.',
  'mockup.readings.head_mm': 'From the board edge to where it stops, in the card; an overrun is negative.',
  'mockup.readings.tail_mm': 'From the board edge to where it stops, in the card; an overrun is negative.',
  'mockup.readings.opening_deg': 'Angle between the boards where the card holds the book open; 0 closed.',
  'mockup.readings.error_mm': 'How far any one of these readings may be off.',
  'mockup.readings.stop_mm':
    'How far off the stop may be taken to be, alike at both sides. It cannot be seen inside the card. Assumption.',
  'mockup.readings.error_deg': 'How far the angle may be off.',
  'mockup.again.spine_mm': 'Thickness at the spine, over both boards at the joints, book closed.',
  'mockup.again.width_mm': 'A second measure, taken without looking at the first.',
  'mockup.again.height_mm': 'A second measure, taken without looking at the first.',
  'mockup.again.rise_mm': 'From the line between the boards to the top of the spine; 0 where it is flat.',
  'hides.*.width_mm': 'Width of the piece of leather. Not used when its outline is given.',
  'hides.*.height_mm': 'Height of the piece of leather. Not used when its outline is given.',
  'hides.*.outline': 'Corners of the hide, mm.',
  'hides.*.defects': 'Scars, holes, brands and loose places to keep off, mm.',
  'hides.*.backbone_deg':
    "Which way the hide's backbone runs on this piece: 90 = upright, 0 = across. Leather stretches least along it.",
  'hides.spacing_mm': 'Least distance between two pieces.',
  'hides.edge_mm': 'Least distance from the edge of the leather and from defects.',
  'supplies.threadTail_mm': 'Left on each needle at the end of a thread.',
  'supplies.threadWorking_mm': 'Longest thread worked at once, needle to needle: about an arm span.',
  'supplies.backStitches': 'Sewn twice at each end of a thread.',
  'supplies.laceThickness_mm': 'Assumption, for the path of the lace.',
  'supplies.laceTail_mm': 'Left at each end of the lacing, to be hidden.',
  'supplies.laceWorking_mm': 'Longest lace worked at once.',
  'supplies.spliceOverlap_mm': 'Overlap where one lace is joined to the next.',
  'supplies.laceMultiples.*.low': 'Lace for one length of seam, low end.',
  'supplies.laceMultiples.*.high': 'Lace for one length of seam, high end.',
  'supplies.cementBand_mm': 'Width cemented along the cut edge before the seam.',
  'supplies.paintFilm_mm':
    'Thickness of all coats of edge paint together, as it is put on. Assumption, for how much to buy.',
  'supplies.waste': 'Leather to buy beyond the pieces themselves, as a share of their area. Assumption.',
  'rates.maker': 'Printed on the sheet for the customer.',
  'rates.currency': 'Printed before each amount.',
  'rates.decimals': 'Digits after the point of an amount.',
  'rates.prices.outside_per_dm2': 'For 1 dm2 (0.1076 sq ft), waste included in the area.',
  'rates.prices.pocket_per_dm2': 'For 1 dm2; left empty, as the outside.',
  'rates.prices.lining_per_dm2': 'For 1 dm2; left empty, as the outside.',
  'rates.prices.thread_per_m': 'For 1 m.',
  'rates.prices.lace_per_m': 'For 1 m.',
  'rates.prices.cement_per_dm2': 'For 1 dm2 coated.',
  'rates.prices.ribbon_per_m': 'For 1 m.',
  'rates.prices.fastening_each': 'For one, with all its parts: a stud, snap, buckle or pair of magnets.',
  'rates.prices.paint_per_ml': 'For 1 ml.',
  'rates.prices.hour': 'For one hour of work.',
  'rates.minutes.measure': 'Measuring the book, printing and cutting the template. Minutes; assumption.',
  'rates.minutes.mockup': 'Cutting the card and trying it on the book. Minutes; assumption.',
  'rates.minutes.cut': 'Laying out and cutting, for each piece. Minutes; assumption.',
  'rates.minutes.edges': 'Skiving, bevelling, edges that are out of reach later. Minutes; assumption.',
  'rates.minutes.case': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.trace': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.tool': 'Where it is a step and nothing is designed. Minutes; assumption.',
  'rates.minutes.tooling':
    'For 100 mm (4 in) of line. A letter counts as 5 times its height, a picture as strokes 1 mm apart. Minutes; assumption.',
  'rates.minutes.dry': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.dye': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.dress': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.punch': 'For each hole or slit of each layer group. Minutes; assumption.',
  'rates.minutes.line': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.cement': 'Where it is a step. Minutes; assumption.',
  'rates.minutes.assemble': 'Aligning the layers, with what of lining and cementing is no step. Minutes; assumption.',
  'rates.minutes.stitch': 'For each stitch of saddle stitching. Minutes; assumption.',
  'rates.minutes.lace': 'For each turn of lacing. Minutes; assumption.',
  'rates.minutes.finish': 'Dressing, loading the book, last trial. Minutes; assumption.',
  'rates.markup_percent': 'Added to the sum of all lines, percent.',
  'doubts.*.u': 'Two in three are no further off; on the page, give or take: 19 in 20.',
  'doubts.*.distribution': 'Mostly small errors, or any size equally likely.',
  'doubts.*.with': 'Lengths by one tool share the error of its scale.',
};

/** Help of the field at a path of the job, as `leather.lining.min_mm`; empty where it has none. */
export function fieldHelp(path: string): string {
  const general = path
    .replace(/^(leather|hides|supplies\.laceMultiples)\.[^.]+\./, '$1.*.')
    .replace(/^(doubts)\..+\./, '$1.*.');
  return FIELD_HELP[path] ?? FIELD_HELP[general] ?? '';
}
