import type { AskOf } from '#core/contract/operation.ts';
import type { jointCompare } from '#core/contract/pinJoint.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

type Request = AskOf<typeof jointCompare>;

/** Sizes of a joint in the order in which they are asked. */
export const JOINT_SIZES = [
  ...(['pinMm', 'gapEachSideMm', 'eyeBoreMm', 'eyeThicknessMm', 'eyeWidthMm', 'eyeEndMm'] as const),
  ...(['forkBoreMm', 'forkThicknessMm', 'forkWidthMm', 'forkEndMm'] as const),
] as const;
export type JointSize = (typeof JOINT_SIZES)[number];
type Sizes = Partial<Record<JointSize, string>>;

export type PinJointForm = {
  asDrawn: Sizes;
  repaired: Sizes;
  forceText: string;
  pinYieldText: string;
  pinUltimateText: string;
  lugYieldText: string;
};

export const emptyPinJointForm: PinJointForm = {
  ...{ asDrawn: {}, repaired: {}, forceText: '' },
  ...{ pinYieldText: '650', pinUltimateText: '900', lugYieldText: '355' },
};

const figure = (text: string | undefined, most = 10_000): number | null => {
  const read = readNumber(text ?? '', 'mm');
  return read.ok && read.value >= 0 && read.value <= most ? read.value : null;
};

/** What is asked, once the joint as drawn is whole and readable; null before. A box of the repair left empty is as drawn. */
export function jointRequest(form: PinJointForm): Request | null {
  const drawn = sizesOf(form.asDrawn);
  const texts = JOINT_SIZES.map((name) => [name, (form.repaired[name] ?? '').trim() || form.asDrawn[name]] as const);
  const repaired = sizesOf(Object.fromEntries(texts));
  const [pinYieldMpa, pinUltimateMpa, lugYieldMpa] = [form.pinYieldText, form.pinUltimateText, form.lugYieldText].map(
    (text) => figure(text, 3000),
  );
  const forceKiloN = form.forceText.trim() === '' ? null : figure(form.forceText, 100_000);
  if (!drawn || !repaired || !pinYieldMpa || !pinUltimateMpa || !lugYieldMpa) return null;
  if (form.forceText.trim() !== '' && !forceKiloN) return null;
  return {
    ...{ asDrawn: jointOf(drawn), repaired: jointOf(repaired), forceN: forceKiloN && forceKiloN * 1000 },
    steel: { pinYieldMpa, pinUltimateMpa, lugYieldMpa },
    comesOut: true,
  };
}

type Read = Record<JointSize, number>;

/** All sizes over 0, the gap 0 or more; null when one is missing. */
function sizesOf(texts: Sizes): Read | null {
  const read = JOINT_SIZES.map((name) => [name, figure(texts[name])] as const);
  const whole = read.every(([name, mm]) => mm !== null && (mm > 0 || name === 'gapEachSideMm'));
  return whole ? (Object.fromEntries(read) as Read) : null;
}

const jointOf = (mm: Read): Request['asDrawn'] => ({
  pinMm: mm.pinMm,
  gapEachSideMm: mm.gapEachSideMm,
  eye: { boreMm: mm.eyeBoreMm, thicknessMm: mm.eyeThicknessMm, widthMm: mm.eyeWidthMm, endMm: mm.eyeEndMm },
  fork: { boreMm: mm.forkBoreMm, thicknessMm: mm.forkThicknessMm, widthMm: mm.forkWidthMm, endMm: mm.forkEndMm },
});
