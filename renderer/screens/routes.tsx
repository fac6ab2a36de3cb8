import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import { checkWords } from '#renderer/words/checkWords.ts';
import { exchangeWords } from '#renderer/words/exchangeWords.ts';
import { tabWords } from '#renderer/words/frameWords.ts';
import { jobWords } from '#renderer/words/jobWords.ts';
import { planWords } from '#renderer/words/planWords.ts';
import { recallWords } from '#renderer/words/recallWords.ts';

export type ScreenRoute = {
  /** wouter pattern under the hash: "/machine/:machineId"; the screen reads it with useParams */
  path: string;
  screen: LazyExoticComponent<ComponentType>;
  /** word on its tab; screens without one are reached from another screen */
  tab?: string;
  /** tab that is lit while this screen stands, when it has none of its own */
  under?: string;
  /** shown without an open record, and instead of any screen that needs one */
  start?: true;
  /** needs no record */
  free?: true;
};

/** Every screen, one line each; tabs stand in this order. The first with a tab is home. */
export const routes: readonly ScreenRoute[] = [
  { path: '/machines', screen: lazy(() => import('./machines/Machines.tsx')), tab: tabWords.machines },
  { path: '/machine/:machineId', screen: lazy(() => import('./machine/Machine.tsx')), under: tabWords.machines },
  {
    path: '/machine/:machineId/:pointId/:panel',
    screen: lazy(() => import('./machine/Machine.tsx')),
    under: tabWords.machines,
  },
  { path: '/slide/:assemblyId', screen: lazy(() => import('./slide/Slide.tsx')), under: tabWords.machines },
  { path: '/repair/:positionId', screen: lazy(() => import('./repair/Repair.tsx')), under: tabWords.machines },
  { path: '/strip-down', screen: lazy(() => import('./strip-down/StripDown.tsx')), tab: tabWords.stripDown },
  {
    path: '/strip-down/:machineId',
    screen: lazy(() => import('./strip-down/StripDown.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/jobs', screen: lazy(() => import('./jobs/Jobs.tsx')), tab: jobWords.tab },
  { path: '/job/take-in/:machineId', screen: lazy(() => import('./jobs/TakeInJob.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId', screen: lazy(() => import('./jobs/Job.tsx')), under: jobWords.tab },
  { path: '/job/:rebuildId/:paper', screen: lazy(() => import('./jobs/JobPaper.tsx')), under: jobWords.tab },
  { path: '/cut-list/:of', screen: lazy(() => import('./repair/CutListPaper.tsx')), under: jobWords.tab },
  { path: '/recall', screen: lazy(() => import('./recall/Recall.tsx')), tab: recallWords.tab },
  { path: '/recall/paper', screen: lazy(() => import('./recall/RecallPaper.tsx')), under: recallWords.tab },
  { path: '/phone', screen: lazy(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/phone/:customerId', screen: lazy(() => import('./phone/Phone.tsx')), under: recallWords.tab },
  { path: '/winter', screen: lazy(() => import('./plan/Plan.tsx')), tab: planWords.tab },
  { path: '/customers', screen: lazy(() => import('./customers/Customers.tsx')), tab: tabWords.customers },
  { path: '/slips', screen: lazy(() => import('./slips/Slips.tsx')), tab: tabWords.slips },
  { path: '/slips/:slipId', screen: lazy(() => import('./slips/OldSlip.tsx')), under: tabWords.slips },
  { path: '/slip/:machineId', screen: lazy(() => import('./slips/MachineSlip.tsx')), under: tabWords.slips },
  {
    path: '/measuring-sheet/:machineId',
    screen: lazy(() => import('./old-sheets/MeasuringSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/old-sheets', screen: lazy(() => import('./old-sheets/OldSheets.tsx')), under: tabWords.stripDown },
  {
    path: '/old-sheets/sheet/:stripDownId',
    screen: lazy(() => import('./old-sheets/SavedSheet.tsx')),
    under: tabWords.stripDown,
  },
  { path: '/forecast-check', screen: lazy(() => import('./check/Check.tsx')), tab: checkWords.tab },
  {
    path: '/forecast-check/:pointId/:takenOn',
    screen: lazy(() => import('./check/ExplainSize.tsx')),
    under: checkWords.tab,
  },
  { path: '/take-in', screen: lazy(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  { path: '/take-in/:machineId', screen: lazy(() => import('./take-in/TakeIn.tsx')), under: tabWords.machines },
  { path: '/part-classes', screen: lazy(() => import('./part-classes/PartClasses.tsx')), tab: tabWords.partClasses },
  { path: '/shop', screen: lazy(() => import('./shop/Shop.tsx')), tab: tabWords.shop },
  { path: '/exchange', screen: lazy(() => import('./exchange/Exchange.tsx')), tab: exchangeWords.tab },
  {
    path: '/fits/:positionId/:choice',
    screen: lazy(() => import('./fits/Fits.tsx')),
    under: tabWords.machines,
  },
  { path: '/fits', screen: lazy(() => import('./fits/Fits.tsx')), under: tabWords.shop },
  {
    path: '/forecast-settings',
    screen: lazy(() => import('./forecast-settings/ForecastSettings.tsx')),
    under: tabWords.shop,
  },
  {
    path: '/shop-figures',
    screen: lazy(() => import('./shop-figures/ShopFigures.tsx')),
    under: tabWords.shop,
  },
  { path: '/history', screen: lazy(() => import('./history/History.tsx')), under: tabWords.shop },
  { path: '/start', screen: lazy(() => import('./start/Start.tsx')), under: tabWords.shop, start: true },
  { path: '/marks', screen: lazy(() => import('./marks/Marks.tsx')), free: true },
  { path: '/marks/controls', screen: lazy(() => import('./marks/Controls.tsx')), free: true },
  { path: '/marks/picture/:sample', screen: lazy(() => import('./marks/SamplePicture.tsx')), free: true },
];

export { tabWords };
