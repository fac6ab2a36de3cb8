import type { HowKnown } from '../howKnown.ts';

/** One thing that can hurt someone, said where the work that brings it is shown and on the job card. */
export type SafetyCaution = { id: CautionId; text: string; references: string; howKnown: HowKnown };

export const CAUTION_IDS = [
  'forged-parts',
  'cracked-part',
  'stored-pressure',
  'props',
  'springs',
  'fume',
  'nylon',
  'crack-test',
  'weld-test-levels',
  'build-up',
  'new-boss',
  'press',
  'heat',
  'oversize',
  'hand-over',
  'drawbar',
  'road',
  'placed-on-market',
] as const;
export type CautionId = (typeof CAUTION_IDS)[number];

/** Said once on every paper and screen that shows a caution. */
export const LOCAL_RULES_PREVAIL =
  'Local codes, the maker’s instructions and licensed practice prevail. What stands here is advice; a competent person decides.';

const caution = (id: CautionId, howKnown: HowKnown, text: string, references: string): SafetyCaution => ({
  ...{ id, text, references, howKnown },
});

/** Every caution, in the order in which a job meets them. */
export const SAFETY_CAUTIONS: readonly SafetyCaution[] = [
  caution(
    'cracked-part',
    'published',
    'Any crack in a hook, ring, ball, piton, pin or chain: take it out of service and reject it. It is not ground out and used again.',
    'discard rules for lifting hooks',
  ),
  caution(
    'forged-parts',
    'analogy',
    'Forged or heat-treated towing parts are replaced, not welded, built up, straightened by flame or press, or re-shaped, unless the maker and a qualified welding procedure say so in writing.',
    'rules of lifting-hook makers, by analogy; EN ISO 15614-1, EN ISO 9606-1, EN ISO 3834; coupling approval (EU 167/2013, 2015/208, UN R55), from memory',
  ),
  caution(
    'stored-pressure',
    'from-memory',
    'Before rams or pipes are opened: lower to the ground, engine off, work the levers both ways, prove the pressure gone. It stays behind check valves and in accumulators. Never feel for a leak by hand.',
    'ISO 4413; ISO 12100; ISO 14118',
  ),
  caution(
    'props',
    'from-memory',
    'Sling the hitch or carrier, or prop it on rated stands, before a pin is drawn. Nobody under it. A ram is no support.',
    'ISO 12100; UK LOLER 1998 and PUWER 1998; Irish 2007 General Application Regulations',
  ),
  caution(
    'springs',
    'from-memory',
    'Let latch and balance springs off under control. Note their preload. Eye protection.',
    'ISO 12100; PUWER 1998',
  ),
  caution(
    'fume',
    'from-memory',
    'Strip galvanising, paint and oil well back before welding or cutting: zinc, lead and isocyanate fume. Extraction and mask.',
    'EN ISO 21904; COSHH; welding fume is classed as carcinogenic to humans (IARC 2017)',
  ),
  caution(
    'nylon',
    'from-memory',
    'Take slide strips out before welding or heating near them: hot polyamide melts, burns, and gives off carbon monoxide and irritant and toxic gases.',
    'material safety data, in general',
  ),
  caution(
    'crack-test',
    'scope',
    'Clean, have it tested by a trained person, and write down method and result. Magnetic test of welds to ISO 17638, which sets no acceptance levels (ISO 23278 does); dye to ISO 3452-1, levels ISO 23277; people to ISO 9712.',
    'ISO 17638, note; ISO 23278, scope; ISO 3452-1; ISO 23277; ISO 9712',
  ),
  caution(
    'weld-test-levels',
    'from-memory',
    'For welds only, never for a hook: a linear indication at levels 1, 2, 3 is at most 1.5, 3, 6 mm by magnetic test and 2, 4, 8 mm by dye. Look them up in the standard before judging by them.',
    'ISO 23278; ISO 23277',
  ),
  caution(
    'build-up',
    'from-memory',
    'Check material and carbon, preheat, low-hydrogen rods, cool slowly. Earth lead near the weld, never through bearings, rams or electronics. Disconnect battery and controllers. Test for cracks afterwards.',
    'EN 1011-2; ISO 15614-7 for overlay',
  ),
  caution(
    'new-boss',
    'from-memory',
    'Line bosses up on a bar through both. Weld class and sequence as agreed; check the bore again once cold. Record the welder.',
    'EN ISO 5817; ISO 13920',
  ),
  caution(
    'press',
    'from-memory',
    'Guard the press, stand clear of the line of the bar, go in small steps, no chains or straps under spring load. Test for cracks afterwards.',
    'PUWER 1998; EN ISO 16092 for presses',
  ),
  caution(
    'heat',
    'from-memory',
    'Keep to the heat the steel stands. Gloves, for heat and for cold; air the place where dry ice or nitrogen is used. No oily or painted parts. Never heat a closed hollow section or a ram.',
    'ISO 12100',
  ),
  caution(
    'oversize',
    'common-practice',
    'Make sure that no mating part interchanges. Stamp the size on pin and boss, and put it in the record.',
    'common practice, no source',
  ),
  caution(
    'drawbar',
    'from-memory',
    'Chock the wheels, support axle and drawbar each on its own. A drawbar may whip up when its load comes off.',
    'HSE guidance, in general',
  ),
  caution(
    'road',
    'from-memory',
    'Marking and plate with the D and S values stay readable. A repaired coupling may lose its approval for the road.',
    'UN R55; EU 2015/208',
  ),
  caution(
    'placed-on-market',
    'from-memory',
    'A substantial modification can make the repairer the manufacturer.',
    'EU 2023/1230, from 20 January 2027',
  ),
  caution(
    'hand-over',
    'published',
    'Try the latch three times, locked and let go, under load. Driver’s indicator works. Hand-over note written.',
    'PUWER regulations 5 and 6, seen through an inspection study; three times: common practice, no source',
  ),
];
