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
  cloudPoints: number;
  classNodes: number;
  useScaleHours: number;
  useLnSd: number;
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
  partsPerClassForFigures: 150,
  cloudPoints: 32,
  classNodes: 12,
  useScaleHours: 40,
  useLnSd: 0.5,
};

const COMMON = 'common practice, no source';
const CHOSEN = 'own choice, kept because it did well on the data of tests/accuracy';

/** Meaning, unit and source of each setting, for the screen on which a shop edits them. */
export const modelSettingNotes: Record<keyof ModelSettings, { unit: string; meaning: string; source: string }> = {
  defaultHRefHours: {
    unit: 'h',
    meaning: 'typical life of a class without trade knowledge; only a unit of time for the model',
    source: COMMON,
  },
  wideLimitWearMm: {
    unit: 'mm',
    meaning: 'wear in one typical life, for a class with neither trade knowledge nor a limit',
    source: COMMON,
  },
  wideS0: {
    unit: 'ln',
    meaning: '1 sd of the ln rate of a class without trade knowledge: a factor of 2.7 either way',
    source: COMMON,
  },
  tradeDistrust: {
    unit: 'factor',
    meaning: 'the spread of a trade range is widened by this: such ranges are told from memory',
    source: COMMON,
  },
  partScatterScale: {
    unit: 'ln',
    meaning: 'prior scale (half-normal) of the scatter of ln rate between like parts on one machine',
    source: COMMON,
  },
  pathScatterScale: {
    unit: 'share of the wear in one typical life',
    meaning: "prior scale (half-normal) of the scatter of a part's own path",
    source: COMMON,
  },
  machineScatterScale: {
    unit: 'ln',
    meaning: 'prior scale (half-normal) of the harshness of machines: driver, dirt, greasing',
    source: COMMON,
  },
  workTypeTrust: {
    unit: 'share',
    meaning:
      "how far the shop's word on a machine (light, hard) is believed before its parts are measured: this power of the times as fast it stands for",
    source: CHOSEN,
  },
  visitErrorGauges: {
    unit: 'gauge errors',
    meaning: 'prior scale (half-normal) of the error shared by all sizes of a class in one visit',
    source: CHOSEN,
  },
  lnPowerSd: {
    unit: 'ln',
    meaning: 'prior 1 sd of ln of the power of time: below 1 wear runs in, above 1 it quickens',
    source: COMMON,
  },
  lnPowerTail: {
    unit: 'share',
    meaning:
      'lets strong curvature in where the readings show it: ln power is its sd times (x + this x^3), x standard normal',
    source: CHOSEN,
  },
  linearChance: { unit: 'chance', meaning: 'prior chance that wear goes evenly with hours', source: CHOSEN },
  oddPartShare: {
    unit: 'share',
    meaning: 'share of parts that are odd: soft, dry, crooked; their ln rate scatters wider',
    source: CHOSEN,
  },
  oddPartWidth: { unit: 'factor', meaning: 'how much wider the ln rate of an odd part scatters', source: CHOSEN },
  driftDelta: {
    unit: 'per root ln',
    meaning:
      'how far the wear law may drift when carried beyond the last size: 1 sd of the rate is about this times the root of ln(hours / hours at last size)',
    source: CHOSEN,
  },
  beyondHRefs: { unit: 'typical lives', meaning: 'hours beyond this many typical lives are not given', source: COMMON },
  partsPerClassForFigures: {
    unit: 'parts',
    meaning: "a class's scatter is learned from about this many parts at most; all its parts speak for its rate",
    source: COMMON,
  },
  cloudPoints: {
    unit: 'points',
    meaning:
      'points at which the figures of a class of 60 parts or more are weighed; twice as many below, four times below 20',
    source: COMMON,
  },
  classNodes: {
    unit: 'nodes',
    meaning:
      'points that then stand for what is known of a class of 60 parts or more; twice as many below, four times below 20',
    source: COMMON,
  },
  useScaleHours: {
    unit: 'h',
    meaning: 'how lumpy use is: variance of the hours in a stretch of days over their mean',
    source: COMMON,
  },
  useLnSd: { unit: 'ln', meaning: "1 sd of a machine's hours a day about the like machines'", source: COMMON },
};
