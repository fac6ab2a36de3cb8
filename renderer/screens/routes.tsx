import { type LazyPart, lazyPart } from '#renderer/controls/lazyPart.tsx';
import { checkWords } from '#renderer/words/checkWords.ts';
import { exchangeWords } from '#renderer/words/exchangeWords.ts';
import { tabWords } from '#renderer/words/frameWords.ts';
import { jobWords } from '#renderer/words/jobWords.ts';
import { planWords } from '#renderer/words/planWords.ts';
import { recallWords } from '#renderer/words/recallWords.ts';

export type ScreenRoute = {
  /** wouter pattern under the hash: "/machine/:machineId"; the screen reads it with useParams */
  path: string;
  screen: LazyPart;
  /** word on its tab; screens without one are reached from another screen */
  tab?: string;
  /** tab that is lit while this screen stands, when it has none of its own */
  under?: string;
  /** shown without an open record, and instead of any screen that needs one */
  start?: true;
  /** needs no record */
  free?: true;
};

const machine = lazyPart(async () => {
  await import('#renderer/charts/WearChart.tsx'); // by far the most of its code: run in one go with the page's own it would hold the window up
  return import('./machine/Machine.tsx');
});
const stripDown = lazyPart(() => import('./strip-down/StripDown.tsx'));

/** What is gone to next from the list and from the bench. */
export const nextScreens: readonly LazyPart[] = [machine, stripDown];

/** Every screen, one line each; tabs stand in this order. The first with a tab is home. */
export const routes: readonly ScreenRoute[] = [
  { path: '/machines', screen: lazyPart(() => import('./machines/Machines.tsx')), tab: tabWords.machines },
  { path: '/machine/:machineId', screen: machine, under: tabWords.machines },
  {
    path: '/machine/:machineId/:pointId/:panel',
    screen: machine,
    under: tabWords.machines,
  },
  { path: '/slide/:assemblyId', screen: lazyPart(() => import('./slide/Slide.tsx')), under: tabWords.machines },
  { path: '/repair/:positionId', screen: lazyPart(() => import('./repair/Repair.tsx')), under: tabWords.machines },
  { path: '/strip-down', screen: stripDown, tab: tabWords.stripDown },
  {
    path: '/strip-down/:machineId',
    screen: stripDown,
    under: tabWords.stripDown,
  },
  { path: '/jobs', screen: lazyPart(() => import('./jobs/Jobs.tsx')), tab: jobWords.tab },
  { path: '/job/take-in/:machineId', screen: lazyPart(() => import('./jobs/TakeInJob.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId', screen: lazyPart(() => import('./jobs/Job.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId/:paper', screen: lazyPart(() => import('./jobs/JobPaper.tsx')), under: jobWords.tab },
  { path: '/cut-list/:of', screen: lazyPart(() => import('./repair/CutListPaper.tsx')), under: jobWords.tab },
  { path: '/recall', screen: lazyPart(() => import('./recall/Recall.tsx')), tab: recallWords.tab },
  { path: '/recall/paper', screen: lazyPart(() => import('./recall/RecallPaper.tsx')), under: recallWords.tab },
  { path: '/phone', screen: lazyPart(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/phone/:customerId', screen: lazyPart(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/winter', screen: lazyPart(() => import('./plan/Plan.tsx')), tab: planWords.tab },
  { path: '/customers', screen: lazyPart(() => import('./customers/Customers.tsx')), tab: tabWords.customers },
  { path: '/slips', screen: lazyPart(() => import('./slips/Slips.tsx')), tab: tabWords.slips },
  { path: '/slips/:slipId', screen: lazyPart(() => import('./slips/OldSlip.tsx')), under: tabWords.slips },
  { path: '/slip/:machineId', screen: lazyPart(() => import('./slips/MachineSlip.tsx')), under: tabWords.slips },
  {
    path: '/measuring-sheet/:machineId',
    screen: lazyPart(() => import('./old-sheets/MeasuringSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/old-sheets', screen: lazyPart(() => import('./old-sheets/OldSheets.tsx')), under: tabWords.stripDown },
  {
    path: '/old-sheets/sheet/:stripDownId',
    screen: lazyPart(() => import('./old-sheets/SavedSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/forecast-check', screen: lazyPart(() => import('./check/Check.tsx')), tab: checkWords.tab },
  {
    path: '/forecast-check/:pointId/:takenOn',
    screen: lazyPart(() => import('./check/ExplainSize.tsx')),
    under: checkWords.tab,
  },
  { path: '/take-in', screen: lazyPart(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  { path: '/take-in/:machineId', screen: lazyPart(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  {
    path: '/part-classes',
    screen: lazyPart(() => import('./part-classes/PartClasses.tsx')),
    tab: tabWords.partClasses,
  },
  { path: '/shop', screen: lazyPart(() => import('./shop/Shop.tsx')), tab: tabWords.shop },
  { path: '/exchange', screen: lazyPart(() => import('./exchange/Exchange.tsx')), tab: exchangeWords.tab },
  {
    path: '/fits/:positionId/:choice',
    screen: lazyPart(() => import('./fits/Fits.tsx')),
    under: tabWords.machines,
  },
  { path: '/fits', screen: lazyPart(() => import('./fits/Fits.tsx')), under: tabWords.shop },
  {
    path: '/forecast-settings',
    screen: lazyPart(() => import('./forecast-settings/ForecastSettings.tsx')),
    under: tabWords.shop,
  },
  {
    path: '/shop-figures',
    screen: lazyPart(() => import('./shop-figures/ShopFigures.tsx')),
    under: tabWords.shop,
  },
  { path: '/history', screen: lazyPart(() => import('./history/History.tsx')), under: tabWords.shop },
  { path: '/start', screen: lazyPart(() => import('./start/Start.tsx')), under: tabWords.shop, start: true },
  { path: '/marks', screen: lazyPart(() => import('./marks/Marks.tsx')), free: true },
  { path: '/marks/controls', screen: lazyPart(() => import('./marks/Controls.tsx')), free: true },
  { path: '/marks/picture/:sample', screen: lazyPart(() => import('./marks/SamplePicture.tsx')), free: true },
];

export { tabWords };
