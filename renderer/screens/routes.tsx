import { type ComponentType, type LazyExoticComponent, lazy } from 'react';
import { tabWords } from '#renderer/words/frameWords.ts';

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
  { path: '/marks', screen: lazy(() => import('./marks/Marks.tsx')), free: true },
  { path: '/marks/controls', screen: lazy(() => import('./marks/Controls.tsx')), free: true },
  { path: '/marks/picture/:sample', screen: lazy(() => import('./marks/SamplePicture.tsx')), free: true },
];

export { tabWords };
