import type { allOperations } from '../contract/allOperations.ts';
import type { Handlers } from '../contract/operation.ts';
import { assemblyAddHandler } from './assemblyAdd.ts';
import { assemblyHalvesHandler } from './assemblyHalves.ts';
import { assemblyJointsHandler, assemblySaveJointsHandler } from './assemblyJoints.ts';
import { assemblyMoveHandler } from './assemblyMove.ts';
import { assemblyMoveHalfHandler } from './assemblyMoveHalf.ts';
import { exchangeBringInSheetHandler } from './bringInSheet.ts';
import { checkExplainHandler } from './check/checkExplain.ts';
import { checkReadHandler } from './check/checkRead.ts';
import { checkWorthHandler } from './check/checkWorth.ts';
import { classesListHandler } from './classesList.ts';
import { classSaveHandler } from './classSave.ts';
import type { Context } from './context.ts';
import { customerChangeHandler } from './customerChange.ts';
import { customerEraseHandler } from './customerErase.ts';
import { customerErasePreviewHandler } from './customerErasePreview.ts';
import { customerExportHandler } from './customerExport.ts';
import { customerMergeHandler } from './customerMerge.ts';
import { customerPartHandler } from './customerPart.ts';
import { customersListHandler } from './customersList.ts';
import { customersSheetHandler } from './customersSheet.ts';
import { entriesListHandler } from './entriesList.ts';
import { entriesRedoLastHandler } from './entriesRedo.ts';
import { entriesUndoLastHandler } from './entriesUndo.ts';
import { exchangeExportFolderHandler } from './exportFolder.ts';
import { exchangeExportWorkbookHandler } from './exportWorkbook.ts';
import { findingAddHandler } from './findingAdd.ts';
import { findingAddPhotosHandler } from './findingAddPhotos.ts';
import { findingCloseHandler } from './findingClose.ts';
import { findingDeclineHandler } from './findingDecline.ts';
import { findingStrikeDeclineHandler } from './findingStrikeDecline.ts';
import { findingStrikePhotoHandler } from './findingStrikePhoto.ts';
import { fitPressHandler } from './fitPress.ts';
import { fitReadHandler } from './fitRead.ts';
import { fitStraightenHandler } from './fitStraighten.ts';
import { fitterSaveHandler } from './fitterSave.ts';
import { forecastAllHandler } from './forecastAll.ts';
import {
  forecastSettingsReadHandler,
  forecastSettingsSaveHandler,
  forecastSettingsTryHandler,
} from './forecastSettings.ts';
import { forecastWhyHandler } from './forecastWhy.ts';
import { gaugeSaveHandler } from './gaugeSave.ts';
import { exchangeDropFileHandler, exchangeTakePieceHandler } from './givenFiles.ts';
import { hoursAddHandler } from './hoursAdd.ts';
import { hoursMeterHandler } from './hoursMeter.ts';
import { hoursPutRightHandler } from './hoursPutRight.ts';
import { hoursShareHandler } from './hoursShare.ts';
import { hoursSourceHandler } from './hoursSource.ts';
import { jobsCancelHandler, jobsStartHandler, jobsStateHandler } from './jobs/jobs.ts';
import { jointCompareHandler } from './jointCompare.ts';
import { kindSaveHandler } from './kindSave.ts';
import { learnedFirst } from './learning/learnedFirst.ts';
import { exchangeLookAtSheetHandler } from './lookAtSheet.ts';
import { machineChangeHandler } from './machineChange.ts';
import { machineReadHandler } from './machineRead.ts';
import { machineSellOnHandler } from './machineSellOn.ts';
import {
  machinesLinesHandler,
  machinesListHandler,
  machinesNamesHandler,
  machinesOrderHandler,
} from './machinesList.ts';
import { machinesStoppedHandler } from './machinesStopped.ts';
import { machineTakeInHandler } from './machineTakeIn.ts';
import { sheetBlankHandler } from './measuringSheet.ts';
import { oldSheetsEndHandler, oldSheetsProgressHandler } from './oldSheetsEnd.ts';
import { oldSheetsGridHandler } from './oldSheetsGrid.ts';
import { oldSheetsReadHandler } from './oldSheetsRead.ts';
import { oldSheetsSaveHandler } from './oldSheetsSave.ts';
import { oldSheetsTakeBackHandler } from './oldSheetsTakeBack.ts';
import { ownerPutRightHandler } from './ownerPutRight.ts';
import { photoDropHandler } from './photoDrop.ts';
import { photoKeepHandler } from './photoKeep.ts';
import { photoReadHandler } from './photoRead.ts';
import {
  planAwaySaveHandler,
  planAwayStrikeHandler,
  planSettingsSaveHandler,
  planWeekSaveHandler,
} from './plan/planGoesBy.ts';
import {
  planAddHandler,
  planAgreeHandler,
  planAtFarmHandler,
  planBookHandler,
  planDoneHandler,
  planMoveHandler,
  planPinHandler,
  planPostponeHandler,
  planReadHandler,
  planSplitHandler,
} from './plan/planHandlers.ts';
import { pointAddHandler } from './pointAdd.ts';
import { pointLimitsHandler } from './pointLimits.ts';
import {
  ratesReadHandler,
  ratesSaveHandler,
  rebuildApproveHandler,
  rebuildBoredHandler,
  rebuildChangeHandler,
  rebuildCheckHandler,
  rebuildLineSaveHandler,
  rebuildLineStrikeHandler,
  rebuildQuoteHandler,
  rebuildReadHandler,
  rebuildsListHandler,
  rebuildTakeInHandler,
} from './rebuild/rebuildHandlers.ts';
import { rebuildHandOverHandler } from './rebuild/rebuildHandOver.ts';
import { rebuildPaperHandler } from './rebuild/rebuildPaper.ts';
import { rebuildAddPhotosHandler, rebuildStrikePhotoHandler } from './rebuild/rebuildPhotos.ts';
import { rebuildLookAtBentHandler, rebuildTakeStraightenHandler } from './rebuild/rebuildStraighten.ts';
import { rebuildTakeChosenHandler } from './rebuild/rebuildTakeChosen.ts';
import { rebuildTakeSlideHandler } from './rebuild/rebuildTakeSlide.ts';
import {
  contactAddHandler,
  contactStrikeHandler,
  contactTermsSaveHandler,
  quietAddHandler,
  quietStrikeHandler,
  recallSaveLeadHandler,
} from './recall/contactHandlers.ts';
import { phoneFindHandler, phoneReadHandler } from './recall/phone.ts';
import { recallCalendarHandler } from './recall/recallCalendar.ts';
import { recallLettersHandler } from './recall/recallLetters.ts';
import { recallListHandler } from './recall/recallList.ts';
import { recallNewsHandler, recallSeenHandler } from './recall/recallNews.ts';
import { recallPaperHandler } from './recall/recallPaper.ts';
import { recordBackUpHandler } from './recordBackUp.ts';
import { recordBackupFolderHandler } from './recordBackupFolder.ts';
import { recordBackupsHandler } from './recordBackups.ts';
import { recordBringInHandler } from './recordBringIn.ts';
import { recordConfirmPlaceHandler } from './recordConfirmPlace.ts';
import { recordOpenHandler } from './recordOpen.ts';
import { recordOpenDemoHandler } from './recordOpenDemo.ts';
import { recordRestoreHandler } from './recordRestore.ts';
import { recordRestorePreviewHandler } from './recordRestorePreview.ts';
import { recordStartEmptyHandler } from './recordStartEmpty.ts';
import { recordStateHandler } from './recordState.ts';
import { renewalAnswerHandler } from './renewalAnswer.ts';
import { renewalPutRightHandler } from './renewalPutRight.ts';
import { repairChooseHandler } from './repair/repairChoose.ts';
import { repairCutListHandler } from './repair/repairCutList.ts';
import { repairCutListPaperHandler } from './repair/repairCutListPaper.ts';
import { repairReadHandler } from './repair/repairRead.ts';
import { repairSaveFactsHandler } from './repair/repairSaveFacts.ts';
import { shopFiguresReadHandler, shopFiguresSaveHandler } from './repair/shopFigures.ts';
import { slideFactsHandler, slideReadHandler, slideSaveFactsHandler } from './repair/slideRead.ts';
import { exchangeRestoreFolderHandler } from './restoreFolder.ts';
import { shopReadHandler } from './shopRead.ts';
import { shopSaveHandler } from './shopSave.ts';
import { sizeAnswerHandler } from './sizeAnswer.ts';
import { sizePutRightHandler } from './sizePutRight.ts';
import { sizesQuestionedHandler } from './sizesQuestioned.ts';
import { slipMakeHandler } from './slipMake.ts';
import { slipPreviewHandler } from './slipPreview.ts';
import { slipReadHandler } from './slipRead.ts';
import { slipsListHandler } from './slipsList.ts';
import { stripDownDiscardHandler } from './stripDownDiscard.ts';
import { stripDownJudgeHandler } from './stripDownJudge.ts';
import { stripDownKeepHandler } from './stripDownKeep.ts';
import { stripDownReadHandler } from './stripDownRead.ts';
import { stripDownSaveHandler } from './stripDownSave.ts';
import { stripDownSheetHandler } from './stripDownSheet.ts';
import { stripDownSwapHandler } from './stripDownSwap.ts';

/** The one handler of each operation; the order is the contract's. */
export const allHandlers: Handlers<typeof allOperations, Context> = {
  'record/state': recordStateHandler,
  'record/startEmpty': recordStartEmptyHandler,
  'record/openDemo': recordOpenDemoHandler,
  'record/open': recordOpenHandler,
  'record/bringIn': recordBringInHandler,
  'record/backUp': recordBackUpHandler,
  'record/backups': recordBackupsHandler,
  'record/backupFolder': recordBackupFolderHandler,
  'record/restorePreview': recordRestorePreviewHandler,
  'record/restore': recordRestoreHandler,
  'record/confirmPlace': recordConfirmPlaceHandler,
  'machines/stopped': machinesStoppedHandler,
  'machines/list': machinesListHandler,
  'machines/order': machinesOrderHandler,
  'machines/lines': machinesLinesHandler,
  'machines/names': machinesNamesHandler,
  'machine/read': learnedFirst(machineReadHandler),
  'machine/takeIn': machineTakeInHandler,
  'machine/change': machineChangeHandler,
  'assembly/add': assemblyAddHandler,
  'assembly/halves': assemblyHalvesHandler,
  'assembly/joints': assemblyJointsHandler,
  'assembly/saveJoints': assemblySaveJointsHandler,
  'assembly/move': assemblyMoveHandler,
  'assembly/moveHalf': assemblyMoveHalfHandler,
  'point/limits': pointLimitsHandler,
  'customers/list': customersListHandler,
  'customers/sheet': customersSheetHandler,
  'customer/change': customerChangeHandler,
  'customer/merge': customerMergeHandler,
  'customer/part': customerPartHandler,
  'customer/export': customerExportHandler,
  'customer/erasePreview': customerErasePreviewHandler,
  'customer/erase': customerEraseHandler,
  'machine/sellOn': machineSellOnHandler,
  'owner/putRight': ownerPutRightHandler,
  'hours/add': hoursAddHandler,
  'hours/putRight': hoursPutRightHandler,
  'hours/meter': hoursMeterHandler,
  'hours/share': hoursShareHandler,
  'hours/source': hoursSourceHandler,
  'stripDown/sheet': stripDownSheetHandler,
  'stripDown/keep': stripDownKeepHandler,
  'stripDown/discard': stripDownDiscardHandler,
  'stripDown/judge': stripDownJudgeHandler,
  'stripDown/save': learnedFirst(stripDownSaveHandler),
  'sheet/blank': sheetBlankHandler,
  'stripDown/read': stripDownReadHandler,
  'oldSheets/read': oldSheetsReadHandler,
  'oldSheets/grid': oldSheetsGridHandler,
  'oldSheets/save': oldSheetsSaveHandler,
  'oldSheets/takeBack': oldSheetsTakeBackHandler,
  'oldSheets/end': oldSheetsEndHandler,
  'oldSheets/progress': oldSheetsProgressHandler,
  'point/add': pointAddHandler,
  'sizes/questioned': sizesQuestionedHandler,
  'size/putRight': sizePutRightHandler,
  'renewal/answer': renewalAnswerHandler,
  'renewal/putRight': renewalPutRightHandler,
  'size/answer': sizeAnswerHandler,
  'stripDown/swap': stripDownSwapHandler,
  'finding/add': findingAddHandler,
  'finding/close': findingCloseHandler,
  'finding/decline': findingDeclineHandler,
  'finding/strikeDecline': findingStrikeDeclineHandler,
  'finding/addPhotos': findingAddPhotosHandler,
  'finding/strikePhoto': findingStrikePhotoHandler,
  'photo/keep': photoKeepHandler,
  'photo/read': photoReadHandler,
  'photo/drop': photoDropHandler,
  'entries/list': entriesListHandler,
  'entries/redoLast': entriesRedoLastHandler,
  'entries/undoLast': entriesUndoLastHandler,
  'forecast/all': forecastAllHandler,
  'forecast/why': learnedFirst(forecastWhyHandler),
  'fit/read': fitReadHandler,
  'fit/press': fitPressHandler,
  'fit/straighten': fitStraightenHandler,
  'joint/compare': jointCompareHandler,
  'repair/read': learnedFirst(repairReadHandler),
  'repair/saveFacts': repairSaveFactsHandler,
  'repair/cutListPaper': repairCutListPaperHandler,
  'repair/choose': learnedFirst(repairChooseHandler),
  'repair/cutList': repairCutListHandler,
  'slide/read': learnedFirst(slideReadHandler),
  'slide/facts': slideFactsHandler,
  'slide/saveFacts': slideSaveFactsHandler,
  'shopFigures/read': shopFiguresReadHandler,
  'shopFigures/save': shopFiguresSaveHandler,
  'forecastSettings/read': forecastSettingsReadHandler,
  'forecastSettings/try': forecastSettingsTryHandler,
  'forecastSettings/save': forecastSettingsSaveHandler,
  'classes/list': learnedFirst(classesListHandler),
  'class/save': classSaveHandler,
  'shop/read': shopReadHandler,
  'shop/save': shopSaveHandler,
  'fitter/save': fitterSaveHandler,
  'gauge/save': gaugeSaveHandler,
  'kind/save': kindSaveHandler,
  'rebuilds/list': rebuildsListHandler,
  'rebuild/read': rebuildReadHandler,
  'rebuild/takeIn': rebuildTakeInHandler,
  'rebuild/change': rebuildChangeHandler,
  'rebuild/lineSave': rebuildLineSaveHandler,
  'rebuild/lineStrike': rebuildLineStrikeHandler,
  'rebuild/takeChosen': rebuildTakeChosenHandler,
  'rebuild/addPhotos': rebuildAddPhotosHandler,
  'rebuild/strikePhoto': rebuildStrikePhotoHandler,
  'rebuild/lookAtBent': rebuildLookAtBentHandler,
  'rebuild/takeStraighten': rebuildTakeStraightenHandler,
  'rebuild/takeSlide': rebuildTakeSlideHandler,
  'rebuild/quote': rebuildQuoteHandler,
  'rebuild/approve': rebuildApproveHandler,
  'rebuild/bored': rebuildBoredHandler,
  'rebuild/check': rebuildCheckHandler,
  'rebuild/handOver': rebuildHandOverHandler,
  'rebuild/paper': rebuildPaperHandler,
  'check/read': learnedFirst(checkReadHandler),
  'check/explain': learnedFirst(checkExplainHandler),
  'check/worth': learnedFirst(checkWorthHandler),
  'rates/read': ratesReadHandler,
  'rates/save': ratesSaveHandler,
  'plan/read': planReadHandler,
  'plan/move': planMoveHandler,
  'plan/pin': planPinHandler,
  'plan/agree': planAgreeHandler,
  'plan/atFarm': planAtFarmHandler,
  'plan/book': planBookHandler,
  'plan/postpone': planPostponeHandler,
  'plan/done': planDoneHandler,
  'plan/split': planSplitHandler,
  'plan/add': planAddHandler,
  'plan/settingsSave': planSettingsSaveHandler,
  'plan/weekSave': planWeekSaveHandler,
  'plan/awaySave': planAwaySaveHandler,
  'plan/awayStrike': planAwayStrikeHandler,
  'slip/preview': learnedFirst(slipPreviewHandler),
  'slip/make': learnedFirst(slipMakeHandler),
  'slip/read': slipReadHandler,
  'slips/list': slipsListHandler,
  'recall/list': learnedFirst(recallListHandler),
  'recall/letters': learnedFirst(recallLettersHandler),
  'recall/paper': recallPaperHandler,
  'recall/saveLead': recallSaveLeadHandler,
  'recall/news': recallNewsHandler,
  'recall/seen': recallSeenHandler,
  'recall/calendar': recallCalendarHandler,
  'contact/add': contactAddHandler,
  'contact/strike': contactStrikeHandler,
  'contact/saveTerms': contactTermsSaveHandler,
  'contact/addQuiet': quietAddHandler,
  'contact/strikeQuiet': quietStrikeHandler,
  'phone/find': phoneFindHandler,
  'phone/read': learnedFirst(phoneReadHandler),
  'exchange/takePiece': exchangeTakePieceHandler,
  'exchange/dropFile': exchangeDropFileHandler,
  'exchange/exportFolder': exchangeExportFolderHandler,
  'exchange/exportWorkbook': exchangeExportWorkbookHandler,
  'exchange/restoreFolder': exchangeRestoreFolderHandler,
  'exchange/lookAtSheet': exchangeLookAtSheetHandler,
  'exchange/bringInSheet': exchangeBringInSheetHandler,
  'jobs/start': jobsStartHandler,
  'jobs/state': jobsStateHandler,
  'jobs/cancel': jobsCancelHandler,
};
