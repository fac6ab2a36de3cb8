import { decimalFigure, MINUS, NO_BREAK_SPACE, type Writing, wholeFigure } from '#core/words/quantityText.ts';

/** Micrometres of a deviation as mm, as a drawing has it: +0.025, 0, half micrometres with a fourth place. */
export function deviationFigure(um: number, writing: Writing): string {
  if (um === 0) return '0';
  const figure = decimalFigure(Math.abs(um) / 1000, Number.isInteger(um) ? 3 : 4, writing);
  return um < 0 ? `${MINUS}${figure}` : `+${figure}`;
}

/** A size with its limits in thousandths, and in ten-thousandths where half a micrometre stands in it. */
export const limitSizeFigure = (mm: number, writing: Writing): string =>
  decimalFigure(mm, Math.abs(mm * 1000 - Math.round(mm * 1000)) < 1e-6 ? 3 : 4, writing);

const amount = (um: number, writing: Writing): string => deviationFigure(Math.abs(um), writing).replace('+', '');

export const kiloNewtons = (newtons: number, writing: Writing): string => decimalFigure(newtons / 1000, 1, writing);
const TONNE_FORCE_N = 9806.65;
export const tonneForce = (newtons: number, writing: Writing): string =>
  decimalFigure(newtons / TONNE_FORCE_N, 1, writing);
export const megapascals = (mpa: number): string => wholeFigure(mpa);
export const newtonMetres = (nmm: number): string => wholeFigure(nmm / 1000);
export const celsius = (c: number): string => `${wholeFigure(c)}${NO_BREAK_SPACE}°C`;

const kinds = { clearance: 'Clearance', transition: 'Transition', interference: 'Interference' } as const;
type Ends = { kind: keyof typeof kinds; leastClearanceUm: number; mostClearanceUm: number };

/** "Clearance, 0.009 to 0.050 mm" - of an interference fit the interference, of a transition both. */
function rangeText({ kind, leastClearanceUm, mostClearanceUm }: Ends, writing: Writing): string {
  const figure = (um: number) => amount(um, writing);
  if (kind === 'clearance') return `${figure(leastClearanceUm)} to ${figure(mostClearanceUm)}${NO_BREAK_SPACE}mm`;
  if (kind === 'interference') return `${figure(mostClearanceUm)} to ${figure(leastClearanceUm)}${NO_BREAK_SPACE}mm`;
  return `from ${figure(leastClearanceUm)}${NO_BREAK_SPACE}mm interference to ${figure(mostClearanceUm)}${NO_BREAK_SPACE}mm clearance`;
}

/** Words of the screen of fits. */
export const fitsWords = {
  title: 'Fits and press',
  sub: 'Worked out here and now; nothing of it is kept in the record.',
  toJoint: 'Back to the joint',
  from: (joint: string, choice: string) =>
    `With the figures of ${joint}: ${choice}. What is changed here changes nothing there.`,
  toShop: 'Back to the shop',
  key: 'Fits and press',
  keySub: 'Limits of holes and shafts, press force, heat and cold, pin joints, straightening.',

  jumps: {
    fit: { text: 'Fit', letter: 'F' },
    press: { text: 'Press', letter: 'P' },
    joint: { text: 'Joint', letter: 'J' },
    straight: { text: 'Straighten', letter: 'S' },
  },

  fitHead: 'Fit',
  fit: 'Size and fit',
  fitHint: 'as on a drawing: 50 H7/g6',
  nothingYet: 'No fit yet',
  nothingYetNext: 'Write a size, a hole and a shaft as on a drawing: 50 H7/g6. Or press a fit below.',
  forRepair: 'Where a repair may start',
  uses: {
    'greased-pivot': 'greased pivot',
    'close-pivot': 'closer pivot',
    'latch-pin': 'latch pin',
    'bush-in-boss': 'bush in boss',
    'fixed-pin': 'fixed pin',
  } as Record<string, string>,
  answer: (ends: Ends, feel: string, writing: Writing) => ({
    kind: kinds[ends.kind],
    range: rangeText(ends, writing),
    feel,
  }),
  besides: {
    pins: (pins: string) => `Pin in a pressed bush: ${pins}`,
    wrapped: (seat: string, pins: string, bore: string) =>
      `Wrapped bush: seat ${seat}, pin ${pins}, bore about ${bore} once pressed`,
    welded: (low: string, high: string) =>
      `Boss to be welded in: bore ${low} to ${high}${NO_BREAK_SPACE}mm over before welding, a pin through both while tacking`,
    or: ' or ',
  },
  feelIs: 'in the hand, by common practice',
  tableCaption: 'Limits of size',
  heads: { deviations: 'deviations, mm', largest: 'largest, mm', smallest: 'smallest, mm' },
  parts: { hole: 'Hole', shaft: 'Shaft' },
  /** the end with least clearance, and the end with most, as each kind names them */
  leastWord: { clearance: 'least', transition: 'interference', interference: 'most' },
  mostWord: { clearance: 'most', transition: 'clearance', interference: 'least' },
  dimension: (um: number, writing: Writing) => amount(um, writing),
  nominal: (mm: string) => `Ø${mm}`,
  pictureSays: (pair: string, range: string) => `Tolerance zones of ${pair} to one scale: ${range}`,

  bushParts: { boss: 'Boss', bush: 'Bush' },

  pressHead: 'Press, shrink or glue a bush',
  pressOf: (fit: string) => `with ${fit}`,
  bossOutside: 'Outside of the boss',
  bossOutsideHint: 'smallest circle about the hole that stays in metal',
  bushBore: 'Bore of the bush',
  bushBoreHint: '0: a solid pin',
  length: 'Length in the boss',
  boreBefore: 'Bore made to',
  boreBeforeHint: 'before pressing: E6. Empty: bored after',
  boreWanted: 'Bore wanted',
  boreWantedHint: 'once in: H8',
  bossRz: 'Roughness Rz, boss',
  bushRz: 'Roughness Rz, bush',
  rzHint: 'pressing flattens it; empty: none',
  bossMaterial: 'Boss of',
  bushMaterial: 'Bush of',
  ownYield: { boss: 'Boss, own yield', bush: 'Bush, own yield' },
  ownYieldHint: 'empty: the usual one',
  materials: {
    'structural-steel': 'structural steel',
    'quenched-steel': 'quenched steel',
    'cast-steel': 'cast steel',
    'cast-iron': 'cast iron',
    'tin-bronze': 'tin bronze',
  },
  lubrication: 'Pressed',
  lubrications: { dry: 'dry', oiled: 'oiled' },
  room: 'Workshop',
  pressNeeds: 'Enter outside, bore and length, and force, stresses and heat stand here.',
  nothingPresses: 'This fit leaves clearance: nothing presses.',
  nothingPressesNext: 'Take a fit that holds a bush.',
  takeBushFit: (pair: string) => `Take ${pair}`,
  ends: { loosest: 'loosest', tightest: 'tightest' },
  pressCaption: 'Pressing it in',
  rows: {
    interference: 'interference on diameter, mm',
    pressure: 'pressure, MPa',
    boss: 'stress in the boss, MPa',
    bush: 'stress in the bush, MPa',
    growth: 'boss grows by, mm',
    closeIn: 'bore of the bush closes in by, mm',
    force: 'press force, kN',
    forceTonnes: 'press force, tonne-force',
    torque: 'moment it carries before it slips, N m',
  },
  none: 'none',
  yields: (mpa: string) => `past yield, ${mpa}${NO_BREAK_SPACE}MPa`,
  yieldsNote: (part: 'boss' | 'bush') =>
    `The ${part} is pressed past its yield stress: it stays deformed, and the figures above no longer hold. Take less interference, more wall or other steel.`,
  mayBeLoose: 'Within these limits a bush may come out that nothing holds.',
  boreOnceIn: 'Bore once in',
  boreRange: (low: string, high: string) => `Ø${low} to ${high}${NO_BREAK_SPACE}mm`,
  boreWithin: (wanted: string, within: boolean) =>
    within ? `within ${wanted}` : `not always within ${wanted}: bore it after pressing, or start wider`,
  heatHead: 'Without a press',
  heatBoss: (to: string, tooHot: boolean, upTo: string) =>
    `Heat the boss to ${to}${tooHot ? `: more than the ${upTo} its material stands` : ''}.`,
  freezeAlone: (cold: string, to: string) => `Or cool the bush alone to ${to}: ${cold} does it.`,
  freezeNot: 'Cold alone is not enough, not even liquid nitrogen.',
  both: (cold: string, heat: string, tooHot: boolean) =>
    `Bush from ${cold}: boss at ${heat}${tooHot ? ', still too hot for its material' : ''}.`,
  bothNoHeat: (cold: string) => `Bush from ${cold}: the boss needs no heat.`,
  colds: { freezer: 'the freezer', 'dry-ice': 'dry ice', 'liquid-nitrogen': 'liquid nitrogen' },
  entryRoom: (mm: string) => `All with ${mm}${NO_BREAK_SPACE}mm room to enter, for the most interference.`,
  glue: (low: string, high: string, holdLow: string, holdHigh: string) =>
    `Or turn the bush to Ø${low} to ${high}${NO_BREAK_SPACE}mm and glue it: holds about ${holdLow} to ${holdHigh}${NO_BREAK_SPACE}kN. The adhesive’s own sheet prevails.`,
  glueNot: 'This bore is too wide in its limits to glue.',
  restsHead: 'What this rests on',
  adhesiveIs: 'gap and strength of the adhesive',
  frictionIs: (low: string, high: string) => `friction ${low} to ${high}`,
  materialIs: (part: string, name: string, mpa: string, own: boolean) =>
    `${part}: ${name}, yield ${mpa}${NO_BREAK_SPACE}MPa${own ? ' (the shop’s own word)' : ''}`,
  otherwise: 'its other figures',
  cautions: 'Cautions',

  straightHead: 'Press a bar straight',
  shape: 'Section',
  shapes: { rectangle: 'flat or square', round: 'round', box: 'box', tube: 'tube', 'I-section': 'I' },
  sizes: {
    widthMm: 'Width',
    depthMm: 'Depth, along the push',
    diameterMm: 'Diameter',
    wallMm: 'Wall',
    flangeWidthMm: 'Flange width',
    flangeMm: 'Flange thickness',
    webMm: 'Web thickness',
  } as Record<string, string>,
  bow: 'Bow in the middle',
  bowHint: 'empty: not measured',
  strain: (percent: string) =>
    `The bow has stretched the skin by ${percent}${NO_BREAK_SPACE}%, more where it is kinked; straightening does as much again. Keep it small, and reject on a crack.`,
  yieldStress: 'Yield stress of the steel',
  yieldHint: 'S355: 355; S235: 235',
  span: 'Between the supports',
  part: 'The part is',
  kinds: {
    other: 'another part',
    hook: 'a hook',
    ring: 'a ring or eye',
    ball: 'a ball',
    piton: 'a piton',
    'clevis-pin': 'a clevis pin',
    chain: 'a chain',
    drawbar: 'a drawbar',
  },
  tows: 'carries a towed or lifted load',
  crack: 'a crack is seen or suspected',
  straightened: 'was straightened before',
  steel: 'Forged or heat-treated',
  steels: { no: 'no', yes: 'yes', unknown: 'not known' },
  procedureHead: 'Closed, unless the maker’s written procedure is at hand',
  procedureBy: 'Who gave it',
  procedureReference: 'Its reference',
  closed: 'Not to be straightened',
  because: {
    crack: 'it is cracked, or may be',
    'forged-or-heat-treated': 'it is forged or heat-treated',
    'steel-not-known': 'nobody knows its steel, and it carries a towed or lifted load',
    'straightened-before': 'it was straightened before',
  },
  replaceIt: 'Replace it, or record the maker’s written procedure.',
  straightNeeds: 'Enter section, yield stress and span, and the force stands here.',
  straightRows: {
    firstYield: 'begins to stay bent',
    plastic: 'goes on bending',
    press: 'press that copes',
    spring: 'springs back by, mm',
  },
  straightCaption: 'Pushed in the middle',
  straightHeads: { kN: 'kN', tonnes: 'tonne-force' },
  springNote: (low: string, high: string) =>
    `It springs back by ${low} to ${high}${NO_BREAK_SPACE}mm: push past straight by that, in small steps.`,
  yieldNote: (low: string, high: string) =>
    `Steel often yields at ${low} to ${high} times what its certificate promises; the press is sized by the most.`,
  goSlowly: (from: string, to: string) =>
    `Go slowly between ${from} and ${to}${NO_BREAK_SPACE}kN: there it gives way suddenly.`,
  range: (low: string, high: string) => `${low} to ${high}`,
  block: { fit: 'Fit', rule: 'Limits after', ruleIs: 'ISO 286-1:2010', units: 'Lengths', unitsAre: 'mm' },
} as const;
