import { isWithin, withChanged } from '../maths/bounds.ts';

/** What the winter plan goes by, besides the shop's hours a week and its winter. Costs are bench hours: what the hourly rate would buy. */
export type PlanSettings = {
  winters: number;
  breakdownHours: number;
  busyMonths: number;
  visitHours: number;
  openHours: number;
  leastGain: number;
  leadDays: number;
  partsLeadDays: number;
  overHours: number;
  farmSetUpHours: number;
};

export const defaultPlanSettings: PlanSettings = {
  winters: 4,
  breakdownHours: 30,
  busyMonths: 1.5,
  visitHours: 0.5,
  openHours: 2,
  leastGain: 2,
  leadDays: 7,
  partsLeadDays: 14,
  overHours: 0,
  farmSetUpHours: 1,
};

/** What a setting means, where the program's own value comes from, and how far a shop may move it. */
export type PlanSettingNote = {
  from: number;
  to: number;
  whole: boolean;
  unit: string;
  meaning: string;
  source: string;
};

const SOURCE = 'common practice, no source';

const note = (
  [from, to]: readonly [number, number],
  unit: string,
  meaning: string,
  whole = false,
): PlanSettingNote => ({
  from,
  to,
  whole,
  unit,
  meaning,
  source: SOURCE,
});

export const planSettingNotes: Readonly<Record<keyof PlanSettings, PlanSettingNote>> = {
  winters: note([1, 8], 'winters', 'how far ahead the plan of a machine looks', true),
  breakdownHours: note([0, 1000], 'h', 'what a part that gives way in season costs, told in bench hours'),
  busyMonths: note([1, 10], 'times', 'a breakdown in a month of more use than the mean costs this many times as much'),
  visitHours: note([0, 100], 'h', 'hours of a visit whatever is done: papers, moving it about'),
  openHours: note([0, 200], 'h', 'opening and closing an assembly whose kind does not say what comes off'),
  leastGain: note(
    [0, 200],
    'h',
    'nobody is called in for a visit that saves less than this against leaving it a winter',
  ),
  leadDays: note([0, 365], 'days', 'notice a customer is given before a visit', true),
  partsLeadDays: note([0, 365], 'days', 'until parts that are ordered now are there', true),
  overHours: note([0, 200], 'h', 'hours over its own that the plan may put into a week'),
  farmSetUpHours: note(
    [0, 100],
    'h',
    'loading, setting up and clearing away at a farm, once for all machines seen to there in a week; the way comes on top',
  ),
};

export const planSettingNames = Object.keys(defaultPlanSettings) as (keyof PlanSettings)[];

/** A value a shop may give a setting. */
export const isLegalPlanSetting = (name: keyof PlanSettings, value: number): boolean =>
  isWithin(planSettingNotes[name], value);

/** The program's settings with what the shop has changed; a name it does not know, or a value beyond bounds, is passed over. */
export const planSettingsWith = (changed: Readonly<Record<string, number>>): PlanSettings =>
  withChanged(defaultPlanSettings, planSettingNotes, changed);
