import type { JOINT_FIGURE_NAMES } from '#core/contract/pinJoint.ts';
import { decimalFigure, type Writing } from '#core/words/quantityText.ts';

type Figure = (typeof JOINT_FIGURE_NAMES)[number];

/** Words of the pin joint on the screen of fits. */
export const pinJointWords = {
  head: 'Pin joint, repaired beside as drawn',
  sizesCaption: 'Sizes, mm',
  heads: { asDrawn: 'as drawn', repaired: 'repaired' },
  repairedHint: 'An empty box: as drawn.',
  sizes: {
    pinMm: 'pin',
    gapEachSideMm: 'gap each side',
    eyeBoreMm: 'eye, bore',
    eyeThicknessMm: 'eye, thickness',
    eyeWidthMm: 'eye, across the pull',
    eyeEndMm: 'eye, middle of bore to end',
    forkBoreMm: 'fork plate, bore',
    forkThicknessMm: 'fork plate, thickness',
    forkWidthMm: 'fork plate, across the pull',
    forkEndMm: 'fork plate, bore to end',
  },
  sizeOf: (size: string, state: string) => `${size}, ${state}`,
  force: 'Pull on the joint',
  forceHint: 'empty: ratios only',
  steel: { pinYield: 'Pin, yield', pinUltimate: 'Pin, tensile strength', lugYield: 'Lugs, yield' },
  needs: 'Enter the joint as drawn, and what the repair changes.',
  notWorse: 'No figure is worse than as drawn.',
  worse: (figure: string) => `Worse than as drawn, most of all: ${figure}.`,
  saysNothing: 'That says nothing of whether the joint as drawn is strong enough for what it is used for.',
  figuresCaption: 'Stresses of the joint',
  figureHeads: { asDrawn: 'as drawn, MPa', repaired: 'repaired, MPa', change: 'repaired to drawn' },
  figures: {
    'pin-shear': 'pin, shear',
    'pin-bending': 'pin, bending',
    'eye-bearing': 'eye, pressure of the pin',
    'eye-net-tension': 'eye, tension beside the bore',
    'eye-tear-out': 'eye, tearing out',
    'fork-bearing': 'fork, pressure of the pin',
    'fork-net-tension': 'fork, tension beside the bore',
    'fork-tear-out': 'fork, tearing out',
  } satisfies Record<Figure, string>,
  change: (ratio: number, word: string, writing: Writing) =>
    word === 'the same' ? 'the same' : `${decimalFigure(ratio * 100, 0, writing)}\u00A0%, ${word}`,
  rulesCaption: 'Beside it, the published rules for new structures',
  rulesHeads: { asDrawn: 'as drawn', repaired: 'repaired', limit: 'up to' },
  rules: {
    shear: 'pin, shear, share used',
    bearing: 'pressure of the pin, share used',
    moment: 'pin, bending, share used',
    combined: 'bending with shear, share used',
    contact: 'contact of a loose pin, MPa',
    eyeEnd: 'eye, metal past the bore, mm; at least',
    eyeSide: 'eye, metal beside the bore, mm; at least',
    forkEnd: 'fork, metal past the bore, mm; at least',
    forkSide: 'fork, metal beside the bore, mm; at least',
    stiffLugs: 'pin, bending between stiff lugs, MPa',
    eyeShaped: 'eye shaped about its bore: thickness, across, end, mm; at least',
    forkShaped: 'fork shaped about its bore: thickness, across, end, mm; at least',
  },
  ligament: (there: string, wanted: string) => `${there} of ${wanted}`,
  rulesSource:
    'EN 1993-1-8, Tables 3.9 and 3.10 (a lug of given thickness, or one shaped about its bore, whose end is measured from the middle of the bore: from memory); bending between stiff lugs as textbooks have it. A study of 2023 asks whether they ask enough of pins: keep a margin.',
  factors: (source: string) => `Partial factors: ${source}.`,
} as const;
