import type { fitStraighten, PART_KIND_NAMES } from '#core/contract/fits.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

type Request = AskOf<typeof fitStraighten>;
type Bar = NonNullable<Request['bar']>;
export type Shape = Bar['section']['shape'];
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
  bowText: string;
  kind: (typeof PART_KIND_NAMES)[number];
  tows: boolean;
  crack: boolean;
  straightened: boolean;
  steel: 'no' | 'yes' | 'unknown';
  procedureBy: string;
  procedureReference: string;
};

export const emptyStraightForm: StraightForm = {
  ...{ shape: 'rectangle', sizeTexts: {}, yieldText: '355', spanText: '', bowText: '' },
  ...{ kind: 'other', tows: false, crack: false, straightened: false, steel: 'no' },
  ...{ procedureBy: '', procedureReference: '' },
};

const figure = (text: string | undefined): number | null => {
  const read = readNumber(text ?? '', 'mm');
  return read.ok && read.value > 0 && read.value <= 10_000 ? read.value : null;
};

const STEEL = { no: false, yes: true, unknown: null } as const;

/** The bar, once every size of its section is there; null before. */
function barOf(form: StraightForm): Bar | null {
  const sizes = SIZES_OF[form.shape].map((name) => [name, figure(form.sizeTexts[name])] as const);
  const [yieldMpa, spanMm] = [figure(form.yieldText), figure(form.spanText)];
  if (sizes.some(([, mm]) => mm === null) || yieldMpa === null || yieldMpa > 3000 || spanMm === null) return null;
  const section = { shape: form.shape, ...Object.fromEntries(sizes) } as Bar['section'];
  return { section, yieldMpa, spanMm, bowMm: figure(form.bowText) };
}

/** What is asked: whether the part may be straightened at all, and with what force as soon as the bar is measured. */
export const straightRequest = (form: StraightForm): Request => ({
  bar: barOf(form),
  part: {
    kind: form.kind,
    towingOrLifting: form.tows || form.kind !== 'other',
    crack: form.crack,
    forgedOrHeatTreated: STEEL[form.steel],
    straightenedBefore: form.straightened,
    procedure: { by: form.procedureBy, reference: form.procedureReference },
  },
});
