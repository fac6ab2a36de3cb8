import { hoursFigure } from '#core/words/quantityText.ts';

type Facts = Readonly<Record<string, string | number | boolean | null>>;
type Sentence = (facts: Facts) => string;

const mm = (fact: Facts[string] | undefined, places = 1): string => `${Number(fact ?? 0).toFixed(places)}\u00A0mm`;
const mpa = (fact: Facts[string] | undefined): string => `${Math.round(Number(fact ?? 0))}\u00A0MPa`;
const kn = (fact: Facts[string] | undefined): string => `${hoursFigure(Number(fact ?? 0) / 1000)}\u00A0kN`;
const wall = (f: Facts): string => `${mm(f.leftMm)} left, ${mm(f.wantedMm)} wanted`;

const FIGURES: Readonly<Record<string, string>> = {
  'pin-shear': 'shear of the pin',
  'pin-bending': 'bending of the pin',
  'eye-bearing': 'pressure on the eye',
  'eye-net-tension': 'tension beside the hole of the eye',
  'eye-tear-out': 'tearing out of the eye',
  'fork-bearing': 'pressure on the fork',
  'fork-net-tension': 'tension beside the hole of the fork',
  'fork-tear-out': 'tearing out of the fork',
};
export const stressFigure = (figure: string): string => FIGURES[figure] ?? figure;

/** Why a choice is closed, and what would open it where something would. */
export const closedBecause: Readonly<Record<string, Sentence>> = {
  'cracked-towing-part': () =>
    'Cracked, and it tows or lifts: reject it. Only the maker’s written procedure opens more.',
  'must-stay-standard': (f) => `It interchanges: its hole stays ${mm(f.standardMm)} standard. Bush it back instead.`,
  'oversized-before': (f) => `Opened ${f.times} times before; ${f.atMost} are enough (this shop’s rule).`,
  'pin-not-to-be-had': (f) => `No pin to be had from ${mm(f.cleanUpMm, 2)} up.`,
  'boss-wall-too-thin': (f) => `Wall of the boss: ${wall(f)} (this shop’s rule).`,
  'edge-too-near': (f) => `To the edge: ${wall(f)} (this shop’s rule).`,
  'no-room-for-a-bush-after': (f) => `Next time not even a bush goes in: at ${mm(f.nextMm)} the wall has ${wall(f)}.`,
  'boss-split': () => 'The boss is split or has turned: nothing holds a bush.',
  'welds-near': () => 'Welds close by: a bush in tension would pull at them.',
  'press-no-boss-wall': () => 'The bush would be as wide as the boss.',
  'press-no-bush-wall': () => 'No wall is left for the bush.',
  'press-no-interference': () => 'The bush would not hold.',
  'press-clearance-fit': () => 'The bush would not hold.',
  'steel-work-crack': () => 'Cracked. Only the maker’s written procedure opens this.',
  'steel-work-forged-or-heat-treated': () =>
    'Forged or heat-treated: no welding without the maker’s written procedure.',
  'steel-work-steel-not-known': () => 'Steel not known. Find out what it is first.',
  'steel-work-straightened-before': () => 'Straightened before.',
  'steel-work-cast-iron': () => 'Cast iron: not built up here.',
  'nylon-near': () => 'Nylon still near the heat. Take the strips out first.',
  'plate-not-looked-at': () => 'Nobody has looked at the plate it stands in.',
  'plate-thin-or-unknown': () => 'The plate is thin, or its steel is not known.',
  'no-alignment-bar': () => 'No bar to line both bosses up on.',
  'past-reject': (f) => `Slack ${mm(f.slackMm, 2)}, reject at ${mm(f.rejectSlackMm, 2)}.`,
  'do-not-use': () => 'An open finding says that it must not be used.',
  'iso286-size-outside': (f) => `A size of ${mm(f.nominalMm)} is outside the tables of limits.`,
  'strip-not-measured': () => 'Not measured.',
  'strip-worn-to-a-wedge': (f) =>
    `Worn to a wedge, ${mm(f.unevenMm)} along it: a shim rocks (even within ${mm(f.evenWithinMm)} by this shop’s rule).`,
  'nothing-to-shim': () => 'Somewhere it is as thick as new: a shim would jam the carrier there.',
  'screw-heads-near': (f) =>
    `Only ${mm(f.overHeadsMm)} over the screw heads; ${mm(f.leastMm)} wanted by this shop’s rule.`,
  'strip-ends-not-measured': () => 'One end was not measured.',
  'strip-holes-not-alike': () => 'Its holes do not fit when turned.',
  'other-end-no-thicker': () => 'The other end is no thicker.',
  'iso286-not-tabulated': () => 'This class is not in the tables of limits.',
};

/** What is said beside a choice or beside how the hole was measured. */
export const cautionSaid: Readonly<Record<string, Sentence>> = {
  'pin-not-measured': () => 'Pin not measured: its slack is not known.',
  'other-half-not-known': () => 'Not compared with the drawing: sizes of the other half are missing.',
  'weaker-than-drawn': (f) =>
    `Weaker than drawn: ${stressFigure(String(f.figure))} ${Math.round((Number(f.ratio) - 1) * 100)}\u00A0% more.`,
  'pin-joint-size': () => 'Not compared with the drawing: a size of the joint is missing.',
  'pin-joint-no-ligament': () => 'Not compared with the drawing: by its sizes the hole is wider than its lug.',
  'stamp-the-size': (f) => `Stamp ${mm(f.nominalMm)} on pin and boss.`,
  'boss-steel-taken-as-structural': () => 'Steel of the boss not known: reckoned as structural steel.',
  'boss-yield-own': (f) => `Yield of the boss, the shop’s own word: ${mpa(f.yieldMpa)}.`,
  'boss-yields': (f) => `The boss yields at the tightest: ${mpa(f.stressMpa)} reckoned. The true stress is another.`,
  'bush-yields': (f) => `The bush yields at the tightest: ${mpa(f.stressMpa)} reckoned. The true stress is another.`,
  'bush-may-be-loose': () => 'Within its limits the bush may come out loose: measure before pressing.',
  'press-too-small': (f) => `Needs up to ${kn(f.forceN)}, the press has ${kn(f.pressN)}: heat or freeze.`,
  'heat-alone-too-hot': (f) =>
    `By heat alone ${Math.round(Number(f.heatToC ?? 0))}\u00A0°C: too hot. Freeze the bush too.`,
  'weld-leaves-a-zone': () => 'Leaves a hardened or softened zone, and it draws: bore once cold.',
  'welded-boss-shrinks': (f) =>
    `Bore the new boss ${mm(f.lowMm, 2)} to ${mm(f.highMm, 2)} over before welding; a pin stays through both while tacking.`,
  'pin-length-not-known': () => 'Length of the pin not known: not on the cut list.',
  'bush-length-not-known': () => 'Length of the bush not known: not on the cut list.',
  'boss-length-not-known': () => 'Length of the boss not known: not on the cut list.',
  'no-bar-that-thick': (f) => `No bar to turn ${mm(f.finishedMm)} from: bought, or forged.`,
  'three-jaw-averages-ovality': () =>
    'A three-jaw gauge averages: it cannot judge an oval hole. Read it again on two points.',
  'four-axes-wanted': (f) => `Read on ${f.axes} of ${f.wanted} axes. Four at 45 degrees are wanted.`,
  'square-axes-read-round': (f) =>
    `Two square axes read alike. A slot at 45 degrees to both reads round too and hides a third: wear may be ${mm(f.mayBeMm, 2)}, not ${mm(f.readMm, 2)}.`,
  'screw-head-depth-not-known': () => 'How deep the screw heads lie is not known.',
  'strip-holes-not-known': () => 'Whether its holes fit when turned is not known.',
  'worn-side-not-known': () => 'Which side it wore to is not said: no better centre can be named.',
};

export const reasonText = (
  words: Readonly<Record<string, Sentence>>,
  { code, facts }: { code: string; facts?: Facts | undefined },
): string => words[code]?.(facts ?? {}) ?? code;
