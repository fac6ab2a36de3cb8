import type { fitStraighten, PART_KIND_NAMES } from '#core/contract/fits.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

type Request = AskOf<typeof fitStraighten>;
export type Shape = Request['section']['shape'];
export type SizeName = 'widthMm' | 'depthMm' | 'diameterMm' | 'wallMm' | 'flangeWidthMm' | 'flangeMm' | 'webMm';

/** Sizes each section has, in the order in which they are asked. */
export const SIZES_OF: Readonly<Record<Shape, readonly SizeName[]>> = {
  rectangle: ['widthMm', 'depthMm'],
  round: ['diameterMm'],
  box: ['widthMm', 'depthMm', 'wallMm'],
  tube: ['diameterMm', 'wallMm'],
  'I-section': ['flangeWidthMm', 'depthMm', 'flangeMm', 'webMm'],
};
export const SHAPES = Object.keys(SIZES_OF) as Shape[];

export type StraightForm = {
  shape: Shape;
  sizeTexts: Partial<Record<SizeName, string>>;
  yieldText: string;
  spanText: string;
  kind: (typeof PART_KIND_NAMES)[number];
  tows: boolean;
  crack: boolean;
  straightened: boolean;
  steel: 'no' | 'yes' | 'unknown';
  procedureBy: string;
  procedureReference: string;
};

export const emptyStraightForm: StraightForm = {
  ...{ shape: 'rectangle', sizeTexts: {}, yieldText: '355', spanText: '' },
  ...{ kind: 'other', tows: false, crack: false, straightened: false, steel: 'no' },
  ...{ procedureBy: '', procedureReference: '' },
};

const figure = (text: string | undefined): number | null => {
  const read = readNumber(text ?? '', 'mm');
  return read.ok && read.value > 0 && read.value <= 10_000 ? read.value : null;
};

const STEEL = { no: false, yes: true, unknown: null } as const;

/** What is asked, once every size is there; null before. */
export function straightRequest(form: StraightForm): Request | null {
  const sizes = SIZES_OF[form.shape].map((name) => [name, figure(form.sizeTexts[name])] as const);
  const [yieldMpa, spanMm] = [figure(form.yieldText), figure(form.spanText)];
  if (sizes.some(([, mm]) => mm === null) || yieldMpa === null || yieldMpa > 3000 || spanMm === null) return null;
  return {
    section: { shape: form.shape, ...Object.fromEntries(sizes) } as Request['section'],
    ...{ yieldMpa, spanMm },
    part: {
      kind: form.kind,
      towingOrLifting: form.tows || form.kind !== 'other',
      crack: form.crack,
      forgedOrHeatTreated: STEEL[form.steel],
      straightenedBefore: form.straightened,
      procedure: { by: form.procedureBy, reference: form.procedureReference },
    },
  };
}
