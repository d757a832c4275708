// The public surface of the model, sorted by room: what output, cli and app import, and what the package exports. `parseJob` and
// `fitReport` lead from a document to its report; `coverDesign` gives what drawings, meshes and files are made from.
export { hasOneThickness } from './allowance/needs.ts';
export { bookModel } from './book/bookModel.ts';
export { CLOSED, outlinePolygon } from './book/bookOutline.ts';
export { NOMINAL_SERIES, nominalBoard } from './book/nominalSizes.ts';
export { isRiseEstimated, riseOf } from './book/rise.ts';
export { DOUBTS, type Doubt, doubtOf } from './doubt/doubtOf.ts';
export { type ExploreField, exploreFields } from './explore/exploreField.ts';
export { EXPLORE_RESULTS, type ExploreResult, type FitLimit, type ResultPart } from './explore/exploreResult.ts';
export { mustChangeList } from './explore/mustChangeList.ts';
export { type SweepPoint, type SweepRange, sweep } from './explore/sweep.ts';
export type { FitTarget, MustChange } from './explore/whatMustChange.ts';
export type { FilmFigure, FilmId, FilmJam, FilmStep, Movement, Movements, SeenJam } from './film/filmStep.ts';
export { filmStepAt, filmSteps, movementsAt } from './film/filmSteps.ts';
export { colourWords } from './finish/colourWords.ts';
export { type CoverColours, colourOf, coverColours, type LeatherColours } from './finish/coverColours.ts';
export { elasticOverRange, fitReport } from './fitReport.ts';
export { type CoverDesign, coverDesign, madeDesign } from './fold/coverDesign.ts';
export type { Fit } from './fold/coverFit.ts';
export { EDGES, type Edge, gapAt, isForeEdge } from './fold/edges.ts';
export { createElasticSolvers } from './fold/elastic/elasticFit.ts';
export { createSettleSolver, settledCover } from './fold/elastic/settledCover.ts';
export { type PatternZone, patternZone } from './fold/patternZone.ts';
export { pocketChoices } from './fold/pocketChoices.ts';
export { bookSection, type CoverSection, coverSection } from './fold/section/coverSection.ts';
export { type EdgeSection, edgeSection } from './fold/section/edgeSection.ts';
export { heightSegments, type SegmentId, type SegmentKind, type StripSegment, stripSegments } from './fold/segments.ts';
export { KIND_DEFAULTS } from './job/bookSchema.ts';
export { FASTENINGS } from './job/constructionSchema.ts';
export { DOUBT_PATHS, type DoubtPath, ORIGINS, type Origin } from './job/doubtSchema.ts';
export { EXAMPLE_JOBS } from './job/examples.ts';
export { designNote, fieldNote, findFieldNote, isJobPath } from './job/fieldNote.ts';
export type { Finish } from './job/finishSchema.ts';
export { MOST_DEFECTS, OUTLINE_LIMITS } from './job/hideSchema.ts';
export { holeNoun } from './job/holeNoun.ts';
export { IRONS, type Iron, ironSchema } from './job/ironSchema.ts';
export { isRecord, type JobDocument, keysOf, type Patch, patched, valueAt } from './job/jobDocument.ts';
export { type JobIssue, jobIssue, jobIssues } from './job/jobIssue.ts';
export type { JobPath } from './job/jobPath.ts';
export { JOB_PATHS, numberFields } from './job/jobPaths.ts';
export { type Job, type JobInput, jobSchema, type LeatherName, SEAM_DEFAULTS, SEAM_STYLES } from './job/jobSchema.ts';
export { BACKBONES, DRESSINGS, MAKING_STATES, type MakingState } from './job/makingSchema.ts';
export { inCurrentVersion, JOB_MIGRATIONS, type JobRecord } from './job/migrate.ts';
export { type OpenedJob, openJob } from './job/openJob.ts';
export { OPTIONAL_STEPS, type OptionalStep, type WorkId } from './job/orderSchema.ts';
export { MAX_JOB_CHARACTERS, type ParsedJob, parseJob, parseJobText } from './job/parseJob.ts';
export { GIVE_OR_TAKE, isColour, isLeather, readField, readFigure } from './job/readField.ts';
export { addRuleIssue } from './job/rule.ts';
export { isPunchedTogether, isStepAskedFor, isStepTaken } from './job/stepTaken.ts';
export {
  ARTWORK_LIMITS,
  type Artwork,
  MOST_DESIGNS,
  MOST_LETTERS,
  TOOLING_FACES,
  type ToolingDesign,
  type ToolingFace,
} from './job/toolingSchema.ts';
export { workedIn } from './job/workedIn.ts';
export {
  DRESSING,
  DUST,
  DYE,
  finishing,
  fittingsStep,
  inOneName,
  KNIFE,
  OPTIONAL_STEP_NAMES,
  type StepId,
} from './job/workOrder.ts';
export { cutStep, INCH_STEPS } from './job/workSchema.ts';
export {
  agreement,
  type Compared,
  comparedCover,
  grouped,
  isWithin,
  statedReach,
} from './learning/comparison.ts';
export { coverLesson } from './learning/coverLesson.ts';
export { outcomeConflict } from './learning/outcomeReadings.ts';
export { changeOf, changeOnHide, isChangeTested, routeWords, TEST_FIRST } from './leather/changeOf.ts';
export { RANGE_POINTS, type RangePoint } from './leather/leatherModel.ts';
export { CARD, TEMPERS, type Temper, temperOf, temperPatches } from './leather/temper.ts';
export { bendTest } from './leatherTest/bendTest.ts';
export { droopTest } from './leatherTest/droopTest.ts';
export { foldTest } from './leatherTest/foldTest.ts';
export {
  type BentResults,
  type LeatherTestResults,
  leatherTestResults,
  type ResultByWay,
} from './leatherTest/leatherTestResults.ts';
export { readingNote } from './leatherTest/readingNote.ts';
export type { TestFigure } from './leatherTest/testFigure.ts';
export type { TestResult } from './leatherTest/testResult.ts';
export {
  GRAINS,
  type Grain,
  type LeatherTests,
  MOST_READINGS,
  READING_SCHEMAS,
  type ReadingList,
  WAYS,
  type Way,
} from './leatherTest/testSchema.ts';
export { type StripTest, TEST_STRIPS } from './leatherTest/testStrip.ts';
export { type CoverSupplies, coverSupplies } from './materials/coverSupplies.ts';
export { coverWeight } from './materials/coverWeight.ts';
export { type LaceStyle, laceNeed } from './materials/lace.ts';
export { handDrawn, onGrid } from './materials/layout/handDrawn.ts';
export { type Clearance, clearanceOf, type Hide, hideOf } from './materials/layout/hide.ts';
export { type Layout, layOut, type PlacedPiece } from './materials/layout/layout.ts';
export { layoutFaults } from './materials/layout/layoutFaults.ts';
export { type PieceOutline, polygonArea } from './materials/pieceOutline.ts';
export { type Quote, type QuoteLine, quote } from './materials/quote.ts';
export { laceOffReel } from './materials/reel.ts';
export { runLength, type SeamRun } from './materials/seamLine.ts';
export { workSteps } from './materials/workSteps.ts';
export { turnBetween } from './math/angle.ts';
export { type Box2, reachOf, stretchInside } from './math/box2.ts';
export {
  type Arc,
  arcPoint,
  bulgedLine,
  type Contour,
  circle,
  contourLength,
  flattened,
  placeAlong,
  rectangle,
  type Segment,
  segmentEnd,
  segmentStart,
} from './math/contour.ts';
export { extent } from './math/extent.ts';
export { inverse } from './math/inverse.ts';
export { meetingSides } from './math/meetingSides.ts';
export { isInside, pointToSegment } from './math/polygonDistance.ts';
export { repeated } from './math/remembered.ts';
export { doubleArea, isSimplePolygon } from './math/simplePolygon.ts';
export { thinnedLine } from './math/thinnedLine.ts';
export { TOLERANCE } from './math/tolerance.ts';
export { addScaled, distance, dot, heading, subtract, type Vec2 } from './math/vec2.ts';
export type { Vec3 } from './math/vec3.ts';
export { cardDesign } from './mockup/cardDesign.ts';
export type { CardLesson, Explained } from './mockup/cardLesson.ts';
export { learnFromCard } from './mockup/learnFromCard.ts';
export { likelihood } from './mockup/likelihood.ts';
export { arrangePieces } from './pattern/arrangePieces.ts';
export {
  type CutSum,
  type Drawing,
  type Entity,
  isStrip,
  isTestStrip,
  isTracing,
  LAYERS,
  type Layer,
  line,
  type Picture,
  type PieceDrawing,
  path,
  pictureFrame,
  pieceWords,
  seenOf,
  type Text,
} from './pattern/drawing.ts';
export { placeOfHole } from './pattern/evenPitch.ts';
export { halfCard } from './pattern/halfCard.ts';
export { hatchLines } from './pattern/hatchLines.ts';
export { holeStrips } from './pattern/holeStrips.ts';
export { mirroredDrawing } from './pattern/mirrorDrawing.ts';
export { oneCard } from './pattern/oneCard.ts';
export { patternDrawing, unwrittenWords } from './pattern/patternDrawing.ts';
export { pieceCorner } from './pattern/pieceCorner.ts';
export { outsideOnceDry } from './pattern/pieces.ts';
export { shareCovered } from './pattern/pocketDepth.ts';
export { holeShape, type PatternSource, sideName, slitAngle, turnAxis } from './pattern/seam.ts';
export { seamHoles } from './pattern/seamHoles.ts';
export { strapOf } from './pattern/strap.ts';
export { strideGroups } from './pattern/strideGroups.ts';
export { type Strokes, strokesAlong } from './pattern/strokes.ts';
export { sumColumn, sumLines } from './pattern/sumColumn.ts';
export { testStripDrawing } from './pattern/testStripDrawing.ts';
export { type Box, baseLine, boxOf, CAPITAL, TAIL, textBox, textWidth } from './pattern/textBox.ts';
export { turnedPiece } from './pattern/turnedPiece.ts';
export { adjust, type Prior, Unknowns } from './photograph/adjust.ts';
export {
  type BookMeasure,
  type BookPhotographs,
  LYING_POINTS,
  type MeasuredBook,
  measuredBook,
  STANDING_POINTS,
} from './photograph/bookMeasures.ts';
export {
  type Lens,
  pixelOf,
  pointAtHeight,
  rotationBy,
  type Standpoint,
  seenFrom,
  sightOf,
} from './photograph/camera.ts';
export { homographyBetween, mapped } from './photograph/homography.ts';
export {
  type CheckBar,
  MARK_SIDE,
  MARKED_PAPERS,
  type MarkedPage,
  type MarkedPaper,
  markedPage,
  PLAIN_PAPERS,
  type PlainPaper,
  paperCorners,
  placeOfMark,
} from './photograph/markedSheet.ts';
export type { Photograph, PlaceCovariance, PlaceDoubt, SeenMark, SeenPoint } from './photograph/photograph.ts';
export { photographPatches } from './photograph/photographPatches.ts';
export { gapBetween, type KnownLength, type PlaneScale, planeScale, printByLengths } from './photograph/planeScale.ts';
export { MOST_PRINT_OFF, PRINT_DOUBTS, paperScale, printScale, type SheetReadings } from './photograph/printScale.ts';
export {
  type PrintScale,
  type Scene,
  type SceneFigure,
  type SceneMeasure,
  type SceneObject,
  type SceneTrouble,
  solveScene,
  type View,
} from './photograph/scene.ts';
export { type Placement, placedOnSheet } from './photograph/sceneStart.ts';
export { chanceWords, isWanting, severity } from './report/check.ts';
export type { Verdict } from './report/checkSchema.ts';
export { leastWrap } from './report/checks/wrapChecks.ts';
export { coverTrials, withTrials } from './report/coverTrials.ts';
export { type BriefReport, briefReport, designReport, type TableReport, tableReport } from './report/designReport.ts';
export { documentSchema } from './report/documentSchema.ts';
export type { BudgetLine, ReportDoubt, ReportTrials } from './report/doubtSchema.ts';
export { doubtWords } from './report/doubtWords.ts';
export { type EasePaid, easePaid } from './report/easePaid.ts';
export { type Check, type CheckId, type FitAt, type Report, reportSchema } from './report/reportSchema.ts';
export { standsOpen } from './report/standsOpen.ts';
export type { ElasticOverRange } from './report/stripContext.ts';
export { STRIP_ROWS } from './report/stripRows.ts';
export { whatWouldReach } from './report/whatWouldReach.ts';
export { withStrip } from './report/withStrip.ts';
export { foldedCover } from './solid/foldedCover.ts';
export {
  type EdgeBand,
  type Face,
  type FitMark,
  type FoldedCover,
  type FoldedHole,
  leatherOf,
  type MeshData,
  type PartName,
  type PatternBox,
  type SeeThrough,
} from './solid/meshData.ts';
export type { Pose, RestRange } from './solid/pose.ts';
export { type FreeEnds, freeEnds } from './solid/seam/freeEnds.ts';
export { holeMesh } from './solid/seam/holeMesh.ts';
export { type SeamCourse, seamCourse, strapCourse } from './solid/seam/seamCourse.ts';
export { movesAt, seamStrands } from './solid/seam/seamStrands.ts';
export { strandMesh } from './solid/seam/strandMesh.ts';
export { type SeamMesh, type StrandDetail, type StrandSweep, strandSweep } from './solid/seam/strandSweep.ts';
export type { CoverLesson } from './stock/coverLessonSchema.ts';
export { type CoverTeaching, coverTeaching } from './stock/coverTeaching.ts';
export type { Hand } from './stock/hand.ts';
export { jobInLeather } from './stock/jobInLeather.ts';
export { knowLeather } from './stock/knowLeather.ts';
export { knownPatches, type TakenLeather } from './stock/knownPatches.ts';
export type { Known, LeatherKnowledge } from './stock/leatherKnowledge.ts';
export { leatherOfJob } from './stock/leatherOfJob.ts';
export { type OpenedLeather, openLeather } from './stock/openLeather.ts';
export { type Contradiction, type Shop, shopKnowledge } from './stock/shop.ts';
export { type StockLeather, TANNAGES } from './stock/stockSchema.ts';
export { type NewerFigure, newerFigures, takeLeather } from './stock/takeLeather.ts';
export { createStripSolver } from './strip/solveStrip.ts';
export { ARTWORK_GRID, readArtworkLines, writeArtworkLines } from './tooling/artworkLines.ts';
export { cached } from './tooling/cached.ts';
export { type DesignWarning, designWarnings } from './tooling/designWarnings.ts';
export { designName, FACE_TITLES, placeWords, warningWords } from './tooling/designWords.ts';
export type { LetterFace, LetterOutline } from './tooling/letterFace.ts';
export {
  ofPattern,
  type PartRelief,
  partOf,
  partReliefs,
  TOOLED_PARTS,
  type TooledPart,
} from './tooling/partRelief.ts';
export { picturePixels } from './tooling/picturePixels.ts';
export {
  type DesignCopy,
  designCopies,
  faceOf,
  type LetterFaces,
  letterIds,
  type MovableDesign,
  mostCopies,
  onCopy,
  type PlacedDesign,
  type PlacedPicture,
  placedDesign,
} from './tooling/placedDesign.ts';
export { type ReliefMap, reliefMap } from './tooling/reliefMap.ts';
export { type FaceTooling, type ToolingAmount, toolingAmount } from './tooling/toolingAmount.ts';
export { onCutPiece, onFinishedFace, SIDES, type ToolingArea } from './tooling/toolingArea.ts';
export { toolingAreas } from './tooling/toolingAreas.ts';
export { homelessDesigns, type TooledFace, tooledFaces, tooledPattern, toolingMarks } from './tooling/toolingMarks.ts';
export { tracingDrawing } from './tooling/tracing.ts';
export { formatFraction } from './units/fraction.ts';
export { isDay } from './units/isDay.ts';
export { MM_PER_INCH, MM_PER_OUNCE, MM2_PER_DM2, mm } from './units/mm.ts';
export { parseArea } from './units/parseArea.ts';
export { parseColour } from './units/parseColour.ts';
export { parseLeatherWeight } from './units/parseLeatherWeight.ts';
export { type LengthUnit, parseLength } from './units/parseLength.ts';
export { type Printer, printer } from './units/printer.ts';
export { degreesFromRadians, radians } from './units/radians.ts';
export { type Reading, refusal } from './units/reading.ts';
export { signed } from './units/signed.ts';
export { normaliseTyped, parseTypedNumber, signOf } from './units/typedNumber.ts';
export { capital } from './words/capital.ts';
export { EDGE_NAMES } from './words/edgeNames.ts';
export { listed } from './words/listed.ts';
export { RANGE_WORDS } from './words/rangeWords.ts';
export { RESULT_ORIGINS, type ResultOrigin } from './words/resultOrigin.ts';
export { sentence } from './words/sentence.ts';
export { TERM_DRAWINGS, type TermPart } from './words/term.ts';
export { type TermInText, termIn } from './words/termIn.ts';
export { titled } from './words/titled.ts';
export { termOf, type Word } from './words/vocabulary.ts';
export { WORDS } from './words/words.ts';
