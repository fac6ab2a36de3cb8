/** What a fitter calls each setting of the forecast; its meaning stands beside it on the Shop's sheet. */
const settingNames: Record<string, string> = {
  defaultHRefHours: 'Typical life where the trade has no figure',
  wideLimitWearMm: 'Wear in that life, where no limit is set',
  wideS0: 'Doubt of a class’s rate where the trade has no figure',
  tradeDistrust: 'Distrust of trade figures',
  partScatterScale: 'Scatter between like parts on one machine',
  pathScatterScale: 'Ups and downs of one part’s wear',
  machineScatterScale: 'Scatter between machines',
  workTypeTrust: 'Trust in the word on a machine’s work',
  visitErrorGauges: 'Error all sizes of a visit share',
  lnPowerSd: 'Doubt whether wear runs in or quickens',
  lnPowerTail: 'Room for strong bends',
  linearChance: 'Chance that wear goes evenly with hours',
  oddPartShare: 'Share of odd parts',
  oddPartWidth: 'How odd they may be',
  driftDelta: 'Drift of the law beyond the last size',
  beyondHRefs: 'Hours no longer spoken for',
  partsPerClassForFigures: 'Parts a class’s scatter is learned from',
  machinesPerClass: 'Machines a class is learned from',
  cloudPoints: 'Fineness of learning',
  classNodes: 'Fineness of forecasting',
  useScaleHours: 'Length of the jobs that hours come in',
  useLnSd: 'Scatter of use between machines',
  widenOffCoverage: 'Widen a class that was too sure of itself',
  leastScored: 'Sizes before a class is judged',
  offCoverageSd: 'When a class is off',
  queryBeyondSd: 'When a size is asked about',
  fallBeyondSd: 'When wear went back too far',
  oneSidedParts: 'Sizes of a visit all to one side',
  doubtBeyond: 'When an extrapolation is long',
  wornShare: 'When a part counts as worn',
  leastWhenWorn: 'Parts measured when worn before it is said',
  mostWhenWorn: 'Share measured when worn before it is said',
};

export const settingName = (name: string): string => settingNames[name] ?? name;

/** What the settings are about, in the order they are shown. */
export const settingGroups: readonly { head: string; names: readonly string[] }[] = [
  {
    head: 'Before anything is measured',
    names: ['tradeDistrust', 'defaultHRefHours', 'wideLimitWearMm', 'wideS0', 'workTypeTrust'],
  },
  {
    head: 'How parts differ',
    names: ['partScatterScale', 'machineScatterScale', 'oddPartShare', 'oddPartWidth', 'visitErrorGauges'],
  },
  {
    head: 'How wear goes on',
    names: ['pathScatterScale', 'linearChance', 'lnPowerSd', 'lnPowerTail', 'driftDelta', 'beyondHRefs'],
  },
  { head: 'Hours to months', names: ['useScaleHours', 'useLnSd'] },
  { head: 'Learning from what came', names: ['widenOffCoverage', 'leastScored', 'offCoverageSd'] },
  {
    head: 'When something is said',
    names: [
      'queryBeyondSd',
      'fallBeyondSd',
      'oneSidedParts',
      'doubtBeyond',
      'wornShare',
      'leastWhenWorn',
      'mostWhenWorn',
    ],
  },
  {
    head: 'How finely it is worked out',
    names: ['partsPerClassForFigures', 'machinesPerClass', 'cloudPoints', 'classNodes'],
  },
];
