import { strToU8 } from 'fflate';

const LAYOUT_1 = [
  '"width_mm":600,"height_mm":600,"outline":[[0,0],[600,0],"defects":[],"backbone_deg":90,"at":[',
  '"strap":{"width_mm":25,"anchor_mm":60,"reach_mm":60,"end_mm":15},"ribbon":{"count":1,"fixed_mm":30,"tail_mm":40},',
  '"penLoop":{"pen_mm":10,"ease_mm":1,"width_mm":35},"corners":"rounded","clipped","square","mouth":"curved",',
  '"rates":{"currency":"","decimals":2,"prices":{"outside_per_dm2":null,"pocket_per_dm2":null,"lining_per_dm2":null,',
  '"thread_per_m":null,"lace_per_m":null,"cement_per_dm2":null,"hour":null},"minutes":{"measure":20,"mockup":25,"cut":8,',
  '"edges":30,"punch":0.1,"assemble":20,"stitch":0.5,"lace":0.6,"finish":20},"markup_percent":0,"extras":[]}}',
  '"supplies":{"threadTail_mm":200,"threadWorking_mm":1800,"backStitches":2,"laceThickness_mm":0.8,"laceTail_mm":100,',
  '"laceWorking_mm":1200,"spliceOverlap_mm":20,"laceMultiples":{"running":{"low":1.5,"high":2},"whip":{"low":2.5,"high":3.5},',
  '"single loop":{"low":5,"high":6.5},"double loop":{"low":7,"high":8.5},"triple loop":{"low":9,"high":10}},',
  '"cementBand_mm":3.175,"waste":0.2},"hides":{"outside":null,"pocket":null,"lining":null,"spacing_mm":3,"edge_mm":5},',
  '"mockup":{"card":{"thickness_mm":0.5,"neutral":0.5,"bendRatio":0.5,"cutWidth_mm":null,"cutHeight_mm":null},"readings":',
  '{"front_mm":null,"back_mm":null,"head_mm":null,"tail_mm":null,"closes":null,"opening_deg":null,"error_mm":0.25,',
  '"error_deg":3}},"construction":{"corners":null,"mouth":"straight","mouthCurve":0.15,"lining":"centre","hole_mm":1,',
  '"slitWidth_mm":2.4,"slitAngle_deg":null,"strap":null,"penLoop":null,"ribbon":null},',
  '"neutral":0.6366197723675814,"bendRatio":0.2,"modulus_MPa":60,"creaseSet":0.8,"density_kg_m3":950,',
  '"foldThickness_mm":null,"strainLimit":0.45},',
  '"foreEdgeThickness_mm":28,"square_mm":3,"jointDip_mm":1,"foldBack_deg":90,"cornerRadius_mm":0,"pageGive":0.25,',
  '"measured":{"closedWrap_mm":null,"rolledHalf_mm":null,"openFlatWidth_mm":null,"error_mm":0.5}},',
  '"seating":"front","back","spine","centred","style":"triple loop","single loop","running","whip","saddle",',
  '"kind":"limp","kind":"paperback","boardThickness_mm":0.4},"leather":{"outside":{"min_mm":1.2,"max_mm":1.6}},',
  '"lining":{"min_mm":0.6,"max_mm":0.8}},"pocket":{"min_mm":1.190625,"max_mm":1.5875},"lining":null},',
  '"min_mm":2.38125,"max_mm":2.778125,"neutral":0.6366,"bendRatio":0.2},"min_mm":1.984375,"max_mm":2.38125},',
  '"pockets":{"construction":"turned","construction":"separate","depth_mm":null,"hold_mm":40},',
  '"ease":{"foreEdge_mm":1,"head_mm":1,"tail_mm":1},',
  '"pattern":{"outsideWidth_mm":null,"outsideHeight_mm":null,"rounding_mm":0.5}}',
  '"seam":{"method":"stitching","edgeMargin_mm":4,"pitch_mm":4}}"spine":{"shape":"rounded","rise_mm":9}},',
  '{"format":"coverwright-job","version":1,"name":"","book":{"kind":"hardback","width_mm":165,"height_mm":240,',
  '"thickness_mm":28,"boardThickness_mm":2.5,"spine":{"shape":"flat","rise_mm":0}},',
  '"leather":{"outside":{"min_mm":1.5875,"max_mm":1.984375}},',
  '"seam":{"method":"lacing","style":"double loop","edgeMargin_mm":6.35,"pitch_mm":4.76}}',
];

const LAYOUT_2 = [
  ...LAYOUT_1,
  '"making":{"state":"cased","dyed","wet-formed","changeAlong":null,"changeAcross":null},',
  '"doubts":{"book.width_mm":{"u":0.25,"distribution":"normal","even","from":"measured","typed","assumed","photograph",',
  '"with":"callipers","ruler A"},"book.height_mm":{"u":0.25},"book.thickness_mm":{"u":0.1},"leather.outside.neutral":{"u":0.03},',
  '"leather.outside.bendRatio":{"u":0.03},"leather.outside":{"u":0.05},"correlations":[{"a":"","b":"","r":0.5}],',
  '"mockup":{"card":{"thickness_mm":0.5,"neutral":0.5,"bendRatio":0.5,"cutWidth_mm":null,"cutHeight_mm":null},"readings":',
  '"strainLimit":null,"pattern":{"outsideWidth_mm":null,"outsideHeight_mm":null,"rounding_mm":0.5},"construction":{',
  '"loosest":{"foreEdge_mm":4,"head_mm":4,"tail_mm":4},"work":{"units":"mm","in","cutStep_mm":null},',
  '"ease":{"foreEdge_mm":null,"head_mm":null,"tail_mm":null,"share":0.95},"making":{"state":"dry","changeAlong":null,',
  '"changeAcross":null},"doubts":{"book.boardThickness_mm":{"from":"usual"},"book.jointDip_mm":{"from":"usual"},',
  '"book.pageGive":{"from":"usual"}},"correlations":[]}',
  '{"format":"coverwright-job","version":2,"name":"","book":{"kind":"hardback","width_mm":165,"height_mm":240,',
  '"thickness_mm":28,"boardThickness_mm":2.5,"spine":{"shape":"flat","rise_mm":0}},',
  '"leather":{"outside":{"min_mm":1.5875,"max_mm":1.984375}},',
  '"seam":{"method":"lacing","style":"double loop","edgeMargin_mm":6.35,"pitch_mm":4.76}}',
];

const LAYOUT_3 = [
  ...LAYOUT_2,
  '"area":"spine","back","frontPocket","backPocket","strap","mirrored":true,"repeat":{"columns":1,"rows":1,"stepX_mm":20,',
  '"stepY_mm":20}},{"kind":"drawing","artwork":"","width_mm":40,"x_mm":0,"y_mm":0,"turn_deg":0,"mirrored":false,"kind":"title",',
  '"area":"front","text":"","face":"","height_mm":10,"reading":"down","up","across","kind":"border","area":"front","lines":2,',
  '"corners":"notched","rounded","square","inset_mm":0,"gap_mm":2,"corner_mm":8},"artworks":[{"id":"","name":"","kind":"lines",',
  '"tooling":{"designs":[{"made":{"measure":"2026-11-26","mockup":"2026-11-26","cut":"2026-11-26","edges":"2026-11-26",',
  '"case":true,"trace":true,"tool":true,"dry":false,"dye":true,"dress":true,"line":true,"cement":true,',
  '"dyeing":"before tooling","holes":"after cementing","clip_mm":3},',
  '"density_kg_m3":950,"friction":0.4,"foldThickness_mm":null,"strainLimit":null},',
  '"tooling":{"margins":{"head_mm":5,"tail_mm":5,"foreEdge_mm":5,"spine_mm":5,"narrow_mm":2},"depth_mm":0.4,"line_mm":0.8,',
  '"designs":[],"artworks":[]},"order":{"case":null,"trace":null,"tool":null,"dry":null,"dye":null,"dress":null,"line":null,',
  '"cement":null,"dyeing":"after tooling","holes":"before joining","clip_mm":null},"made":{},"mockup":{"card":{',
  '"opening_deg":null,"error_mm":0.25,"stop_mm":0.5,"error_deg":3}},"hides":{"outside":null,"pocket":null,"lining":null,',
  '"rates":{"maker":"","currency":"","decimals":2,"prices":{"outside_per_dm2":null,"pocket_per_dm2":null,"lining_per_dm2":null,',
  '"thread_per_m":null,"lace_per_m":null,"cement_per_dm2":null,"ribbon_per_m":null,"fastening_each":null,"hour":null},',
  '"minutes":{"measure":20,"mockup":25,"cut":8,"edges":30,"case":10,"trace":15,"tool":60,"dry":5,"dye":30,"dress":15,',
  '"punch":0.1,"line":10,"cement":10,"assemble":20,"stitch":0.5,"lace":0.6,"finish":20},"markup_percent":0,"extras":[]},',
  '"doubts":{"book.jointDip_mm":{"from":"usual"},"book.pageGive":{"from":"usual"}},"correlations":[]}',
  '"pockets":{"construction":"turned","separate","depth_mm":null,"share":0.6666666666666666,"share":0.5,"hold_mm":40},',
  '{"format":"coverwright-job","version":3,"name":"","work":{"units":"mm","cutStep_mm":null},"book":{"kind":"hardback",',
  '"width_mm":165,"height_mm":240,"thickness_mm":28,"boardThickness_mm":2.5,"spine":{"shape":"flat","rise_mm":0}},',
  '"leather":{"outside":{"min_mm":1.5875,"max_mm":1.984375}},',
  '"seam":{"method":"lacing","style":"double loop","edgeMargin_mm":6.35,"pitch_mm":4.76},"pockets":{"share":0.5}}',
];

const LAYOUT_4 = [
  ...LAYOUT_3,
  '"strap":{"shape":"flap","fastening":"stud","snap","buckle","magnet","width_mm":25,"anchor_mm":30,"reach_mm":35,"end_mm":15},',
  '"surface":"matt","glossy","edge":"raw","painted","metal":"nickel","black",',
  '"cementBand_mm":3.175,"paintFilm_mm":0.3,"waste":0.2},"ribbon_per_m":null,"fastening_each":null,"paint_per_ml":null,"hour":null},',
  '"slitWidth_mm":2.4,"slitAngle_deg":null,"strap":null,"penLoop":null,"ribbon":null},"finish":{"outside":{"colour":"#8f5b3a",',
  '"surface":"satin"},"pocket":null,"lining":{"colour":"#c4b496","surface":"satin"},"edge":"burnished","edgeColour":"#3a2418",',
  '"thread":"#efe3c6","thread_mm":0.8,"lace":"#6b3f24","ribbon":"#7d2432","metal":"brass"},"tooling":{"margins":{"head_mm":5,',
  '{"format":"coverwright-job","version":3,"name":"","work":{"units":"mm","cutStep_mm":null},"book":{"kind":"hardback",',
  '"width_mm":165,"height_mm":240,"thickness_mm":28,"boardThickness_mm":2.5,"spine":{"shape":"flat","rise_mm":0}},',
  '"leather":{"outside":{"min_mm":1.5875,"max_mm":1.984375}},',
  '"seam":{"method":"lacing","style":"double loop","edgeMargin_mm":6.35,"pitch_mm":4.76},"pockets":{"share":0.5}}',
];

const LAYOUT_5 = [
  ...LAYOUT_4,
  '"taken":{"id":"","revision":1,"name":""},"backbone":"across","dressing":"oil or wax","water-based finish","spirit-based finish",',
  '"friction":0.4,"foldThickness_mm":null,"strainLimit":null,"taken":null},"making":{"state":"dry","changeAlong":null,"changeAcross":null,',
  '"dressing":"nothing","backbone":"upright","hand":{"margin_mm":0,"cutting_mm":0}},"stop_mm":0.5,"error_deg":3}},"outcome":{"day":null,',
  '"front_mm":null,"back_mm":null,"head_mm":null,"tail_mm":null,"closes":null,"opening_deg":null,"cracked":null,',
  '"weekLater_deg":null,"error_mm":0.5},"hides":{"outside":null,"pocket":null,"lining":null,',
  '{"format":"coverwright-job","version":3,"name":"","work":{"units":"mm","cutStep_mm":null},"book":{"kind":"hardback",',
  '"width_mm":165,"height_mm":240,"thickness_mm":28,"boardThickness_mm":2.5,"spine":{"shape":"flat","rise_mm":0}},',
  '"leather":{"outside":{"min_mm":1.5875,"max_mm":1.984375}},',
  '"seam":{"method":"lacing","style":"double loop","edgeMargin_mm":6.35,"pitch_mm":4.76},"pockets":{"share":0.5}}',
];

/**
 * Text that links are compressed against, by their layout (preset dictionary, RFC 1950 section 2.2): pieces of job
 * documents, the likeliest last. A text is part of its layout. Never change one: links already sent would no longer open. A
 * better one is a further layout.
 */
export const LINK_DICTIONARIES = {
  1: strToU8(LAYOUT_1.join('')),
  2: strToU8(LAYOUT_2.join('')),
  3: strToU8(LAYOUT_3.join('')),
  4: strToU8(LAYOUT_4.join('')),
  5: strToU8(LAYOUT_5.join('')),
} as const;
