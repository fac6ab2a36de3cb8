import { isWithin, withChanged } from '../maths/bounds.ts';

/**
 * Every constant of the wear model that a shop may change, in one place. A plain object, passed in.
 * What each one means and where it comes from stands beside it in {@link modelSettingNotes}.
 */
export type ModelSettings = {
  defaultHRefHours: number;
  wideLimitWearMm: number;
  wideS0: number;
  tradeDistrust: number;
  partScatterScale: number;
  pathScatterScale: number;
  machineScatterScale: number;
  workTypeTrust: number;
  visitErrorGauges: number;
  lnPowerSd: number;
  lnPowerTail: number;
  linearChance: number;
  oddPartShare: number;
  oddPartWidth: number;
  driftDelta: number;
  beyondHRefs: number;
  partsPerClassForFigures: number;
  machinesPerClass: number;
  cloudPoints: number;
  classNodes: number;
  useScaleHours: number;
  useLnSd: number;
  widenOffCoverage: number;
  leastScored: number;
  offCoverageSd: number;
  queryBeyondSd: number;
  fallBeyondSd: number;
  oneSidedParts: number;
  doubtBeyond: number;
  wornShare: number;
  leastWhenWorn: number;
  mostWhenWorn: number;
};

export const defaultModelSettings: ModelSettings = {
  defaultHRefHours: 6000,
  wideLimitWearMm: 2.5,
  wideS0: 1,
  tradeDistrust: 2,
  partScatterScale: 0.5,
  pathScatterScale: 0.15,
  machineScatterScale: 0.3,
  workTypeTrust: 0.75,
  visitErrorGauges: 2,
  lnPowerSd: 0.15,
  lnPowerTail: 0.05,
  linearChance: 0.35,
  oddPartShare: 0.15,
  oddPartWidth: 2.5,
  driftDelta: 0.15,
  beyondHRefs: 20,
  partsPerClassForFigures: 400,
  machinesPerClass: 200,
  cloudPoints: 64,
  classNodes: 15,
  useScaleHours: 40,
  useLnSd: 0.5,
  widenOffCoverage: 1,
  leastScored: 20,
  offCoverageSd: 2.58,
  queryBeyondSd: 3.5,
  fallBeyondSd: 3,
  oneSidedParts: 6,
  doubtBeyond: 0.5,
  wornShare: 0.75,
  leastWhenWorn: 5,
  mostWhenWorn: 0.8,
};

/** Where nothing is published. */
export const COMMON_PRACTICE = 'common practice, no source';
const CHOSEN = 'own choice, kept because it did well on published and simulated wear';

/** What a setting means, where its value comes from, and the values a shop may give it: beyond them sums lose their way. */
export type ModelSettingNote = {
  from: number;
  to: number;
  /** counts take no fractions */
  whole: boolean;
  unit: string;
  meaning: string;
  source: string;
};

/** Names of the settings, in the order they are told. */
export const modelSettingNames = Object.keys(defaultModelSettings) as (keyof ModelSettings)[];

/** A value a shop may give a setting. */
export const isLegalSetting = (name: keyof ModelSettings, value: number): boolean =>
  isWithin(modelSettingNotes[name], value);

/** The program's settings with what the shop has changed; a name it does not know, or a value beyond bounds, is passed over. */
export const modelSettingsWith = (changed: Readonly<Record<string, number>>): ModelSettings =>
  withChanged(defaultModelSettings, modelSettingNotes, changed);

/** Meaning, unit, bounds and source of each setting, for the screen on which a shop edits them. */
export const modelSettingNotes: Record<keyof ModelSettings, ModelSettingNote> = {
  defaultHRefHours: {
    from: 100,
    to: 100000,
    whole: false,
    unit: 'h',
    meaning: 'typical life of a class without trade knowledge; only a unit of time for the model',
    source: COMMON_PRACTICE,
  },
  wideLimitWearMm: {
    from: 0.05,
    to: 100,
    whole: false,
    unit: 'mm',
    meaning: 'wear in one typical life, for a class with neither trade knowledge nor a limit',
    source: COMMON_PRACTICE,
  },
  wideS0: {
    from: 0.2,
    to: 3,
    whole: false,
    unit: 'logarithm',
    meaning:
      'how far a class without trade knowledge may wear faster or slower than that, as a logarithm: 1 is a factor of 2.7 either way, two times in three',
    source: COMMON_PRACTICE,
  },
  tradeDistrust: {
    from: 1,
    to: 5,
    whole: false,
    unit: 'factor',
    meaning: 'the spread of a trade range is widened by this: such ranges are told from memory',
    source: COMMON_PRACTICE,
  },
  partScatterScale: {
    from: 0.05,
    to: 2,
    whole: false,
    unit: 'logarithm',
    meaning:
      'how far the rates of like parts on one machine may differ, before any is measured (half-normal, as a logarithm: 0.1 is a tenth)',
    source: COMMON_PRACTICE,
  },
  pathScatterScale: {
    from: 0.02,
    to: 1,
    whole: false,
    unit: 'share of the wear in one typical life',
    meaning: "how far a part's wear may wander about its own rate, before any is measured (half-normal)",
    source: COMMON_PRACTICE,
  },
  machineScatterScale: {
    from: 0.02,
    to: 1.5,
    whole: false,
    unit: 'logarithm',
    meaning:
      'how far machines may differ in what they do to all their parts, before any is measured: driver, dirt, greasing (half-normal, as a logarithm)',
    source: COMMON_PRACTICE,
  },
  workTypeTrust: {
    from: 0,
    to: 1,
    whole: false,
    unit: 'share',
    meaning:
      "how far the shop's word on a machine (light, hard) is believed before its parts are measured: this power of the times as fast it stands for",
    source: CHOSEN,
  },
  visitErrorGauges: {
    from: 0.1,
    to: 10,
    whole: false,
    unit: 'gauge errors',
    meaning:
      'how large the error that all sizes of a class share in one visit may be, before any is measured (half-normal)',
    source: CHOSEN,
  },
  lnPowerSd: {
    from: 0.02,
    to: 0.5,
    whole: false,
    unit: 'logarithm',
    meaning:
      'how far wear may bend, before any is measured: wear goes as a power of hours, below 1 it runs in, above 1 it quickens; this is the spread of the logarithm of that power',
    source: COMMON_PRACTICE,
  },
  lnPowerTail: {
    from: 0,
    to: 0.2,
    whole: false,
    unit: 'share',
    meaning:
      'lets wear bend strongly where the readings show it: the spread above times (x + this × x³), x drawn from the standard normal',
    source: CHOSEN,
  },
  linearChance: {
    from: 0.01,
    to: 0.99,
    whole: false,
    unit: 'chance',
    meaning: 'chance that wear goes evenly with hours, before any is measured',
    source: CHOSEN,
  },
  oddPartShare: {
    from: 0,
    to: 0.5,
    whole: false,
    unit: 'share',
    meaning: 'share of parts that are odd: soft, dry, crooked; their rates scatter wider',
    source: CHOSEN,
  },
  oddPartWidth: {
    from: 1,
    to: 5,
    whole: false,
    unit: 'factor',
    meaning: 'how many times as wide the rates of odd parts scatter',
    source: CHOSEN,
  },
  driftDelta: {
    from: 0,
    to: 0.5,
    whole: false,
    unit: 'per root of a logarithm',
    meaning:
      'how far the wear law may drift when carried beyond the last size: the rate may be off by about this times the root of the logarithm of hours over hours at the last size',
    source: CHOSEN,
  },
  beyondHRefs: {
    from: 3,
    to: 100,
    whole: false,
    unit: 'typical lives',
    meaning: 'hours beyond this many typical lives are not given',
    source: COMMON_PRACTICE,
  },
  partsPerClassForFigures: {
    from: 30,
    to: 2000,
    whole: true,
    unit: 'parts',
    meaning:
      "a class's scatter is learned from about this many parts at most; all parts of the machines heard speak for its rate",
    source: COMMON_PRACTICE,
  },
  machinesPerClass: {
    from: 30,
    to: 20_000,
    whole: true,
    unit: 'machines',
    meaning:
      'a class is learned from this many machines at most, drawn by lot once and for all; its mean rate is then known to their scatter divided by the root of their number',
    source: COMMON_PRACTICE,
  },
  cloudPoints: {
    from: 32,
    to: 128,
    whole: true,
    unit: 'points',
    meaning:
      'points at which the figures of a class of 60 parts or more are weighed, between which a smooth surface is laid; a class of fewer has a grid of its own',
    source: COMMON_PRACTICE,
  },
  classNodes: {
    from: 4,
    to: 64,
    whole: true,
    unit: 'nodes',
    meaning:
      'points that then stand for what is known of a class of 60 parts or more; ten times as many of a class of fewer, three times from 20 parts on where it has three figures',
    source: COMMON_PRACTICE,
  },
  useScaleHours: {
    from: 5,
    to: 400,
    whole: false,
    unit: 'h',
    meaning: 'how lumpy use is: variance of the hours in a stretch of days over their mean',
    source: COMMON_PRACTICE,
  },
  useLnSd: {
    from: 0.1,
    to: 1.5,
    whole: false,
    unit: 'logarithm',
    meaning:
      'how far the hours a day of a machine may lie from those of like machines, as a logarithm: 0.5 is a factor of 1.6 either way, two times in three',
    source: COMMON_PRACTICE,
  },
  widenOffCoverage: {
    from: 0,
    to: 1,
    whole: true,
    unit: '1 yes, 0 no',
    meaning:
      'forecasts of a class whose ranges held clearly too few of their sizes are told as much wider as would have held 80 in 100',
    source: CHOSEN,
  },
  leastScored: {
    from: 5,
    to: 200,
    whole: true,
    unit: 'sizes',
    meaning: 'sizes of a class that must have been foretold before it is judged whether its ranges held',
    source: COMMON_PRACTICE,
  },
  offCoverageSd: {
    from: 1,
    to: 6,
    whole: false,
    unit: 'sd',
    meaning:
      'a class is off when it is further from 80 in 100 than this many standard deviations of chance: 2.58 happens once in a hundred',
    source: 'two-sided 1 % point of the standard normal, any table of it',
  },
  queryBeyondSd: {
    from: 2,
    to: 8,
    whole: false,
    unit: 'sd',
    meaning:
      'a size is asked about when it is further from what was expected than this many standard deviations: 3.5 happens once in 2,000 by chance',
    source: 'two-sided 0.05 % point of the standard normal, any table of it',
  },
  fallBeyondSd: {
    from: 1,
    to: 8,
    whole: false,
    unit: 'sd',
    meaning:
      'wear that went back by more than this many standard deviations of both gauges is taken for a renewal nobody entered',
    source: COMMON_PRACTICE,
  },
  oneSidedParts: {
    from: 3,
    to: 50,
    whole: true,
    unit: 'parts',
    meaning:
      'sizes of one visit that must all lie to one side before its gauge is doubted: six do so by chance in three visits of a hundred',
    source: COMMON_PRACTICE,
  },
  doubtBeyond: {
    from: 0.1,
    to: 0.95,
    whole: false,
    unit: 'share',
    meaning:
      'a long extrapolation is said where more than this of the doubt comes from how wear goes on beyond the last size',
    source: COMMON_PRACTICE,
  },
  wornShare: {
    from: 0.3,
    to: 1,
    whole: false,
    unit: 'share',
    meaning: 'a part is worn at this share of the way to its limit',
    source: COMMON_PRACTICE,
  },
  leastWhenWorn: {
    from: 2,
    to: 100,
    whole: true,
    unit: 'parts',
    meaning: 'parts of a class measured once, when worn, before anything is said of it',
    source: COMMON_PRACTICE,
  },
  mostWhenWorn: {
    from: 0.3,
    to: 1,
    whole: false,
    unit: 'share',
    meaning:
      'share of the parts so measured past which it is said: with one part in five measured on the way ranges of a simulated class held, with none they held 3 to 4 in 10',
    source: CHOSEN,
  },
};
