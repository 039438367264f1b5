import type { Herd } from './hoof/herd.ts';
import type { Page } from './page/page.ts';

export { type CalendarDay, calendar } from './files/calendar.ts';
export { clipboardCells } from './files/clipboardCells.ts';
export { readArrow, writeArrow } from './files/columnar/arrow.ts';
export { readParquet, writeParquet } from './files/columnar/parquet.ts';
export { type StoredTable, StoredTableError } from './files/columnar/storedTable.ts';
export { csvOf } from './files/csvOf.ts';
export {
  dataPackage,
  type ForeignKey,
  type PackageDescriptor,
  type PackageField,
  type PackageOptions,
  type PackageResource,
  type Resource,
} from './files/dataPackage.ts';
export type { DateOrder } from './files/dateOrder.ts';
export type { Encoding } from './files/decode.ts';
export { type DescribedColumn, describeColumn } from './files/describeColumn.ts';
export { type CellGrid, gridOfText, type SerialDays } from './files/guided/cellGrid.ts';
export { fileHeadings, limbInHeading } from './files/guided/fileHeadings.ts';
export { usualUnits } from './files/guided/headingMatches.ts';
export { type ColumnUse, type ImportPlan, limbsAcross, sameUse } from './files/guided/importPlan.ts';
export { needsGuide } from './files/guided/needsGuide.ts';
export { type PlannedRead, readPlanned } from './files/guided/readPlanned.ts';
export { isPacked, readSpreadsheet, SpreadsheetError } from './files/guided/spreadsheet.ts';
export { headingsKey, promising, suggestPlan } from './files/guided/suggestPlan.ts';
export { unitOfHeading } from './files/headings.ts';
export { type DateReading, parseDate } from './files/parseDate.ts';
export type { DecimalMark } from './files/parseQuantity.ts';
export { PoolError } from './files/pool/poolError.ts';
export { leftOutOfPool, type Pooled, type PooledColumn, type PoolTables, pooled } from './files/pool/pooled.ts';
export { pooledFiles } from './files/pool/pooledFiles.ts';
export { newPoolKey, openPoolKey, type PoolKey } from './files/pool/poolKey.ts';
export type { PoolChoices, PoolTreatment } from './files/pool/poolTreatment.ts';
export { type FarValue, type NamedColumn, type Remains, remains } from './files/pool/remains.ts';
export type { Problem } from './files/problem.ts';
export { problemColumns, problemSentence } from './files/problems.ts';
export { type ReadOptions, readTable, type TableRead } from './files/readTable.ts';
export { schemaOf } from './files/schemaOf.ts';
export { type ColumnSchema, schemas, type TableSchema } from './files/schemas.ts';
export { type ColumnarTidyFile, columnarTidyFiles, type TidyFile, tidyFiles } from './files/tidyFiles.ts';
export { titleSentences, withoutTitles } from './files/titleRows.ts';
export type { Writable } from './files/writable.ts';
export { tableChunks, type WriteOptions, writeTable } from './files/writeTable.ts';
export { zipped } from './files/zipped.ts';
export * from './geometry/index.ts';
export { bibliography, citation, type Provenance, type Reference } from './hoof/bibliography.ts';
export { type Changes, changesSince, type FootChange } from './hoof/changes.ts';
export { type Context, context, type TableName } from './hoof/context.ts';
export { type DueData, dueData } from './hoof/dueData.ts';
export { type DueFoot, type DueHorse, type DueList, dueList } from './hoof/dueList.ts';
export { dueEvents, dueTable } from './hoof/dueTable.ts';
export { dueTask } from './hoof/dueTask.ts';
export type { ColumnError } from './hoof/errors.ts';
export type { Finding as HerdFinding, Ranking } from './hoof/finding.ts';
export type { FootFacts } from './hoof/footFacts.ts';
export { FootSheet as Sheet } from './hoof/footSheet.ts';
export { type Herd, type HerdOptions, type HerdTables, herd, intervalSheet } from './hoof/herd.ts';
export { HerdError } from './hoof/herdError.ts';
export { history } from './hoof/history.ts';
export { type IntervalData, type IntervalQuestion, intervalData } from './hoof/intervalData.ts';
export type { IntervalDesign } from './hoof/intervalDesign.ts';
export {
  type IntervalAnswer,
  type IntervalChecks,
  type IntervalEffects,
  type IntervalEstimate,
  type IntervalFit,
  type IntervalOptions,
  intervalEffect,
  intervalModel,
  type TooLittle,
} from './hoof/intervalModel.ts';
export { type IntervalSpread, intervalSpread, usualChangeSpread } from './hoof/intervalSpread.ts';
export {
  type Circumstance,
  IntervalSums,
  type IntervalSumsFit,
  type IntervalSumsOptions,
} from './hoof/intervalSums.ts';
export { horseTable, intervalTable, termTable, termWordsTable } from './hoof/intervalTables.ts';
export { intervalTask } from './hoof/intervalTask.ts';
export {
  answerWords,
  betweenSentence,
  checkSentences,
  effectSentence,
  errorSentence,
  explanationSentences,
  modelSentence,
  outcomeWords,
  pWords,
  singularSentence,
} from './hoof/intervalWords.ts';
export type { IntervalWork, IntervalWorkDone, OtherEffect } from './hoof/intervalWork.ts';
export type { HoofSize, ParametricHoof } from './hoof/landmarks/hoofModel.ts';
export { hoofPicture } from './hoof/landmarks/hoofPicture.ts';
export { type HoofCamera, type HoofScene, hoofScene } from './hoof/landmarks/hoofScene.ts';
export type { Landmark } from './hoof/landmarks/landmark.ts';
export { layOver, type PictureToLay } from './hoof/landmarks/layOver.ts';
export { measuresFromPoints } from './hoof/landmarks/measuresFromPoints.ts';
export { parametricHoof, plainHoof } from './hoof/landmarks/parametricHoof.ts';
export type {
  ErrorParts,
  PictureMark,
  PictureMeasure,
  PictureMeasures,
  PictureOptions,
  PictureScale,
  Refusal,
  Squareness,
} from './hoof/landmarks/pictureMeasures.ts';
export { pictureSide } from './hoof/landmarks/pictureSide.ts';
export type { PictureView, PlacedPoint } from './hoof/landmarks/placedPoint.ts';
export { type PlacingError, placingError } from './hoof/landmarks/placingError.ts';
export { type LandmarkView, landmarkView, landmarkViews, scaleLandmarks } from './hoof/landmarks/views.ts';
export { latestOccasions } from './hoof/latest.ts';
export {
  type End,
  endOf,
  isLimb,
  type Limb,
  limbName,
  limbs,
  oppositeOf,
  parseLimb,
  type Side,
  sideOf,
} from './hoof/limbs.ts';
export type { Measure, Measured, Range } from './hoof/measure.ts';
export { measured } from './hoof/measured.ts';
export { measures } from './hoof/measures/index.ts';
export { momentName } from './hoof/momentName.ts';
export { oppositeRows } from './hoof/oppositeRows.ts';
export { type RangeShare, rangeShares } from './hoof/rangeShares.ts';
export { builtInRanges, type Foot, type Ranges, rangeFor } from './hoof/ranges.ts';
export { rangesFromColumns, rangesToColumns } from './hoof/rangeTable.ts';
export { ranking } from './hoof/ranking.ts';
export { footRelations } from './hoof/relations.ts';
export {
  type ColumnRepeatability,
  observerAgreement,
  type PairAgreement,
  repeatabilities,
  smallestChange,
} from './hoof/repeatAgreement.ts';
export {
  type FindingWords,
  findingWords,
  footName,
  measureSentence,
  rangeSentence,
  rangeSource,
  verdictSentence,
} from './hoof/sentences.ts';
export type { Standing } from './hoof/standingAlone.ts';
export {
  longestEver,
  type PlannedVisit,
  planEvents,
  planTable,
  type TrialRules,
  trialPlan,
} from './hoof/trialPlan.ts';
export { type TrialDesign, trialPower } from './hoof/trialPower.ts';
export type { TrialSimulation } from './hoof/trialSimulation.ts';
export { trialTask } from './hoof/trialTask.ts';
export { type Verdict, verdict } from './hoof/verdict.ts';
export type { VisitIndex } from './hoof/visitIndex.ts';
export type {
  Block,
  Chart,
  Code,
  ColumnAbout,
  Control,
  Deferred,
  Download,
  Drawings,
  Editable,
  Figures,
  Finding,
  Form,
  Group,
  Heading,
  Keep,
  LinkedCharts,
  PictureBlock,
  Prose,
  SheetBlock,
} from './page/blocks.ts';
export { cautions } from './page/cautions.ts';
export { addressOf, chosen } from './page/controls.ts';
export { deferred, settled } from './page/deferred.ts';
export type { Keeper, KeptChoice, TakeBack } from './page/keep/keeper.ts';
export type { ControlValue, ControlValues, Page, PageInput } from './page/page.ts';
export { BlockList } from './page/parts/BlockList.tsx';
export type {
  FlatMap,
  KeptReading,
  KnownSize,
  PictureAnswer,
  PictureLandmark,
  PictureReading,
  PictureWork,
  Spot,
  TrialPicture,
} from './page/picture/work.ts';
export { asProse } from './page/prose.ts';
export { type LivePage, mountPage } from './page/render/browser.tsx';
export { saveFile } from './page/saveFile.ts';
export type { Editing } from './page/sheet/editing.ts';
export { type Surroundings, SurroundingsContext } from './page/surroundings.ts';
export type { Running, RunTask, Task, TaskProgress } from './page/task.ts';
export type { ArqueroTable } from './sheet/arquero.ts';
export type { Cell } from './sheet/cell.ts';
export {
  type Column,
  type ColumnInput,
  type Columns,
  type Kind,
  type NumberColumn,
  rowCount,
  TextColumn,
} from './sheet/column.ts';
export { daysFromIso, isoFromDays } from './sheet/days.ts';
export {
  type DisplayUnits,
  displayUnit,
  type FormatOptions,
  formatQuantity,
  symbolOf,
  toDisplay,
} from './sheet/display.ts';
export {
  type CellChanges,
  type ComputedDefinition,
  type Definition,
  type Edit,
  inWords,
  type MeasuredDefinition,
} from './sheet/edits.ts';
export type { DialectName } from './sheet/formula/dialects.ts';
export type { LineageNode } from './sheet/formula/lineage.ts';
export type { SqlOptions } from './sheet/formula/sql.ts';
export { FormulaError } from './sheet/formula/syntax.ts';
export type { PastedBlock } from './sheet/makeEdit.ts';
export type { Relation } from './sheet/relation.ts';
export type { SortBy, View } from './sheet/rowsWhere.ts';
export type { ColumnDescription, SheetOptions } from './sheet/sheet.ts';
export { sqlOf } from './sheet/sqlOf.ts';
export type { Groups, Table } from './sheet/table.ts';
export type { ColumnOf, NameOf, NewRow, Sources } from './sheet/typing.ts';
export * from './stats/index.ts';
export { type CellPlace, cellHistory, type PastCell } from './store/cellHistory.ts';
export { columnOfTexts } from './store/contents.ts';
export { type CopyTimes, copyReminder } from './store/copyReminder.ts';
export { difference } from './store/difference.ts';
export { earlierTables } from './store/earlierTables.ts';
export { journalOf } from './store/entries.ts';
export { isNewer } from './store/isNewer.ts';
export type { Entered, JournalEdit, JournalEntry, RowId } from './store/journal.ts';
export { forgetFolder, type KeptFolderHandle, keepFolder, keptFolder } from './store/keptFolder.ts';
export { type KeptPage, mergedPages, pagesWith, samePage } from './store/keptPage.ts';
export { type Merge, type MergedCell, type MergedFormula, mergeOf, nothingNew } from './store/merge.ts';
export type { Choice, MergeChoices } from './store/mergeEdits.ts';
export { mergedTable, mergeInto } from './store/mergeInto.ts';
export { OpenRecord } from './store/openRecord.ts';
export { forgetPicture, keepPicture, keptPicture, keptPictures } from './store/pictures.ts';
export { type PhotoPoints, pointsFromCsv, pointsToCsv } from './store/pointsTable.ts';
export { type EarlierTable, RecordError, type WholeRecord } from './store/recordFiles.ts';
export { canKeepFolder, chooseFolder, type FolderHandle, RecordFolder } from './store/recordFolder.ts';
export { chooseRecord, newRecord, recordInUse } from './store/recordInUse.ts';
export { changePages, deleteRecord, foundRecord, listRecords, renameRecord } from './store/records.ts';
export { readRecordZip, writeRecordZip } from './store/recordZip.ts';
export { putSetting, type Setting, setting } from './store/settings.ts';
export { tableAsOf } from './store/tableAsOf.ts';
export { TableRecord } from './store/tableRecord.ts';
export type { KeptTable, KeptTables, RecordInfo, TableName as RecordTable } from './store/tables.ts';
export { onTold } from './store/tabs.ts';
export { openRecord, takeLeftBehind, unwrittenRecord } from './store/whenOwn.ts';
export { agreement as agreementChart } from './views/agreement.ts';
export { type BetweenVisitsOptions, betweenVisits } from './views/betweenVisits.ts';
export { type ChartDescription, type ChartOptions, columnTitle } from './views/chart.ts';
export { type ChosenChart, chosenChart } from './views/chosenChart.ts';
export type { DrawingOptions } from './views/drawingOptions.ts';
export { footBelow } from './views/footBelow.ts';
export { footFront } from './views/footFront.ts';
export { type FootAtTime, footOverTime, type OverlaidView, timeLooks, viewWords } from './views/footOverTime.ts';
export { footPartsBelow, footUnderWeight } from './views/footParts.ts';
export { footRear } from './views/footRear.ts';
export { type FootShape, footShape, type Readable } from './views/footShape.ts';
export { footSide } from './views/footSide.ts';
export { footWords } from './views/footWords.ts';
export { type FourFeetOptions, fourFeet } from './views/fourFeet.ts';
export { type IntervalChange, intervalChanges } from './views/intervalChange.ts';
export { intervalEffect as intervalEffectChart } from './views/intervalEffect.ts';
export { intervalSlopes } from './views/intervalSlopes.ts';
export { leftAgainstRight } from './views/leftAgainstRight.ts';
export { levelDistribution } from './views/levelDistribution.ts';
export { type LimbMark, limbMark, limbSign } from './views/limbMark.ts';
export { type LinkedDescription, type LinkedOptions, linkedHerd } from './views/linkedHerd.ts';
export { measureDrawing } from './views/measureDrawing.ts';
export { type MeasureLinesOptions, measureLines } from './views/measureLines.ts';
export { type Photographing, photographBelow, photographRear } from './views/photographing.ts';
export { powerCurve } from './views/powerCurve.ts';
export { rangeShares as rangeSharesChart } from './views/rangeShares.ts';
export { repeatsWorth } from './views/repeatsWorth.ts';
export { residualQuantiles } from './views/residualQuantiles.ts';
export { shapeDistributions } from './views/shapeDistributions.ts';
export { shapeRatios } from './views/shapeRatios.ts';
export { type State, stateSign, stateWords } from './views/stateSign.ts';
export { type SvgNode, svg } from './views/svg.ts';
export { svgText } from './views/svgText.ts';
export { accents, drawingScales, fonts, grounds, inks, roles } from './views/theme.ts';
export { twoFeet } from './views/twoFeet.ts';
export { withoutEachHorse } from './views/withoutEachHorse.ts';
export { cellWord } from './words/cellWord.ts';
export { counted, type Forms } from './words/counted.ts';
export { dayOrder } from './words/dayOrder.ts';
export { fixed } from './words/fixed.ts';
export { midSentence } from './words/midSentence.ts';
export { say } from './words/say.ts';
export { shownDay } from './words/shownDay.ts';
export { shownNumber } from './words/shownNumber.ts';
export { wholeNumber } from './words/wholeNumber.ts';

/** A page about a herd. */
export type HerdPage = Page<Herd>;
