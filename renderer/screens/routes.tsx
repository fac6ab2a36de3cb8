import { checkWords } from '#renderer/words/checkWords.ts';
import { exchangeWords } from '#renderer/words/exchangeWords.ts';
import { tabWords } from '#renderer/words/frameWords.ts';
import { jobWords } from '#renderer/words/jobWords.ts';
import { planWords } from '#renderer/words/planWords.ts';
import { recallWords } from '#renderer/words/recallWords.ts';
import { type LazyScreen, lazyScreen } from './lazyScreen.tsx';

export type ScreenRoute = {
  /** wouter pattern under the hash: "/machine/:machineId"; the screen reads it with useParams */
  path: string;
  screen: LazyScreen;
  /** word on its tab; screens without one are reached from another screen */
  tab?: string;
  /** tab that is lit while this screen stands, when it has none of its own */
  under?: string;
  /** shown without an open record, and instead of any screen that needs one */
  start?: true;
  /** needs no record */
  free?: true;
};

const machine = lazyScreen(() => import('./machine/Machine.tsx'));
const stripDown = lazyScreen(() => import('./strip-down/StripDown.tsx'));

/** What is gone to next from the list and from the bench. */
export const nextScreens: readonly LazyScreen[] = [machine, stripDown];

/** Every screen, one line each; tabs stand in this order. The first with a tab is home. */
export const routes: readonly ScreenRoute[] = [
  { path: '/machines', screen: lazyScreen(() => import('./machines/Machines.tsx')), tab: tabWords.machines },
  { path: '/machine/:machineId', screen: machine, under: tabWords.machines },
  {
    path: '/machine/:machineId/:pointId/:panel',
    screen: machine,
    under: tabWords.machines,
  },
  { path: '/slide/:assemblyId', screen: lazyScreen(() => import('./slide/Slide.tsx')), under: tabWords.machines },
  { path: '/repair/:positionId', screen: lazyScreen(() => import('./repair/Repair.tsx')), under: tabWords.machines },
  { path: '/strip-down', screen: stripDown, tab: tabWords.stripDown },
  {
    path: '/strip-down/:machineId',
    screen: stripDown,
    under: tabWords.stripDown,
  },
  { path: '/jobs', screen: lazyScreen(() => import('./jobs/Jobs.tsx')), tab: jobWords.tab },
  { path: '/job/take-in/:machineId', screen: lazyScreen(() => import('./jobs/TakeInJob.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId', screen: lazyScreen(() => import('./jobs/Job.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId/:paper', screen: lazyScreen(() => import('./jobs/JobPaper.tsx')), under: jobWords.tab },
  { path: '/cut-list/:of', screen: lazyScreen(() => import('./repair/CutListPaper.tsx')), under: jobWords.tab },
  { path: '/recall', screen: lazyScreen(() => import('./recall/Recall.tsx')), tab: recallWords.tab },
  { path: '/recall/paper', screen: lazyScreen(() => import('./recall/RecallPaper.tsx')), under: recallWords.tab },
  { path: '/phone', screen: lazyScreen(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/phone/:customerId', screen: lazyScreen(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/winter', screen: lazyScreen(() => import('./plan/Plan.tsx')), tab: planWords.tab },
  { path: '/customers', screen: lazyScreen(() => import('./customers/Customers.tsx')), tab: tabWords.customers },
  { path: '/slips', screen: lazyScreen(() => import('./slips/Slips.tsx')), tab: tabWords.slips },
  { path: '/slips/:slipId', screen: lazyScreen(() => import('./slips/OldSlip.tsx')), under: tabWords.slips },
  { path: '/slip/:machineId', screen: lazyScreen(() => import('./slips/MachineSlip.tsx')), under: tabWords.slips },
  {
    path: '/measuring-sheet/:machineId',
    screen: lazyScreen(() => import('./old-sheets/MeasuringSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/old-sheets', screen: lazyScreen(() => import('./old-sheets/OldSheets.tsx')), under: tabWords.stripDown },
  {
    path: '/old-sheets/sheet/:stripDownId',
    screen: lazyScreen(() => import('./old-sheets/SavedSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/forecast-check', screen: lazyScreen(() => import('./check/Check.tsx')), tab: checkWords.tab },
  {
    path: '/forecast-check/:pointId/:takenOn',
    screen: lazyScreen(() => import('./check/ExplainSize.tsx')),
    under: checkWords.tab,
  },
  { path: '/take-in', screen: lazyScreen(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  { path: '/take-in/:machineId', screen: lazyScreen(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  {
    path: '/part-classes',
    screen: lazyScreen(() => import('./part-classes/PartClasses.tsx')),
    tab: tabWords.partClasses,
  },
  { path: '/shop', screen: lazyScreen(() => import('./shop/Shop.tsx')), tab: tabWords.shop },
  { path: '/exchange', screen: lazyScreen(() => import('./exchange/Exchange.tsx')), tab: exchangeWords.tab },
  {
    path: '/fits/:positionId/:choice',
    screen: lazyScreen(() => import('./fits/Fits.tsx')),
    under: tabWords.machines,
  },
  { path: '/fits', screen: lazyScreen(() => import('./fits/Fits.tsx')), under: tabWords.shop },
  {
    path: '/forecast-settings',
    screen: lazyScreen(() => import('./forecast-settings/ForecastSettings.tsx')),
    under: tabWords.shop,
  },
  {
    path: '/shop-figures',
    screen: lazyScreen(() => import('./shop-figures/ShopFigures.tsx')),
    under: tabWords.shop,
  },
  { path: '/history', screen: lazyScreen(() => import('./history/History.tsx')), under: tabWords.shop },
  { path: '/start', screen: lazyScreen(() => import('./start/Start.tsx')), under: tabWords.shop, start: true },
  { path: '/marks', screen: lazyScreen(() => import('./marks/Marks.tsx')), free: true },
  { path: '/marks/controls', screen: lazyScreen(() => import('./marks/Controls.tsx')), free: true },
  { path: '/marks/picture/:sample', screen: lazyScreen(() => import('./marks/SamplePicture.tsx')), free: true },
];

export { tabWords };
