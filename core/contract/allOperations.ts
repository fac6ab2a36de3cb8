import {
  exchangeDropFile,
  exchangeExportFolder,
  exchangeExportWorkbook,
  exchangeRestoreFolder,
  exchangeTakePiece,
} from './exchange.ts';
import { forecastAll, forecastWhy } from './forecast.ts';
import { hoursAdd, hoursPutRight } from './hours.ts';
import {
  assemblyAdd,
  assemblyMove,
  customersList,
  machineChange,
  machineRead,
  machinesList,
  machineTakeIn,
  pointLimits,
} from './machine.ts';
import { sheetBlank } from './measuringSheet.ts';
import { classesList, classSave } from './partClass.ts';
import {
  recordBackUp,
  recordBackups,
  recordBringIn,
  recordOpen,
  recordOpenDemo,
  recordRestore,
  recordStartEmpty,
  recordState,
} from './record.ts';
import { fitterSave, gaugeSave, kindSave, shopRead, shopSave } from './shop.ts';
import { slipMake, slipPreview, slipRead, slipsList } from './slip.ts';
import {
  findingAdd,
  findingClose,
  sizeAnswer,
  sizePutRight,
  stripDownDiscard,
  stripDownJudge,
  stripDownKeep,
  stripDownSave,
  stripDownSheet,
} from './stripDown.ts';

/** Everything the program can be asked, in one list: the only door to the core. */
export const allOperations = [
  recordState,
  recordStartEmpty,
  recordOpenDemo,
  recordOpen,
  recordBringIn,
  recordBackUp,
  recordBackups,
  recordRestore,
  machinesList,
  machineRead,
  machineTakeIn,
  machineChange,
  assemblyAdd,
  assemblyMove,
  pointLimits,
  customersList,
  hoursAdd,
  hoursPutRight,
  stripDownSheet,
  stripDownKeep,
  stripDownDiscard,
  stripDownJudge,
  stripDownSave,
  sheetBlank,
  sizePutRight,
  sizeAnswer,
  findingAdd,
  findingClose,
  forecastAll,
  forecastWhy,
  classesList,
  classSave,
  shopRead,
  shopSave,
  fitterSave,
  gaugeSave,
  kindSave,
  slipPreview,
  slipMake,
  slipRead,
  slipsList,
  exchangeTakePiece,
  exchangeDropFile,
  exchangeExportFolder,
  exchangeExportWorkbook,
  exchangeRestoreFolder,
] as const;
