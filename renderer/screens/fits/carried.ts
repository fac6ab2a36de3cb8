import type { RepairChoiceName, RepairSheet } from '#core/contract/repair.ts';
import { emptyPinJointForm, type PinJointForm } from './pinJointForm.ts';
import { emptyPressForm, type PressForm } from './pressForm.ts';

/** What a joint's choice on its repair sheet brings to this sheet, typed in. */
export type Carried = { fit: string; press: PressForm; joint: PinJointForm };

export const NOTHING_CARRIED: Carried = { fit: '50 H7/s6', press: emptyPressForm, joint: emptyPinJointForm };

const text = (mm: number | null): string => (mm === null ? '' : String(mm));

/** Sizes, fit and steel of a choice; null: it has no fit to look at. */
export function carriedFrom({ facts, options }: RepairSheet, choice: RepairChoiceName): Carried | null {
  const option = options.find((one) => one.choice === choice);
  if (!option) return null;
  const { bush, fitInBoss, fitOnPin, bore } = option;
  const at = bush && fitInBoss ? `${bush.outsideMm.nominalMm} ${fitInBoss.classes}` : null;
  const fit = at ?? (bore && fitOnPin ? `${bore.nominalMm} ${fitOnPin.classes}` : null);
  if (fit === null) return null;
  const material = facts.material ?? 'structural-steel';
  const press: PressForm = {
    ...emptyPressForm,
    bossOutsideText: text(facts.bossOutsideMm),
    bushBoreText: bush ? text(facts.standardMm) : '',
    lengthText: text(facts.bossLengthMm),
    bossMaterial: material,
    bossYieldText: text(facts.yieldMpa),
    ...(bush && {
      bushBoreClass: bush.insideBeforeMm.toleranceClass,
      wantedBoreClass: bush.insideAfterMm.toleranceClass,
    }),
  };
  return { fit, press, joint: jointOf(facts, option) };
}

/** The joint as drawn, and what the choice makes of it; empty while the other half is not known. */
function jointOf(facts: RepairSheet['facts'], { bore, pin }: RepairSheet['options'][number]): PinJointForm {
  const { otherHalf, standardMm, bossLengthMm, bossOutsideMm, centreToEdgeMm } = facts;
  if (!otherHalf || bossOutsideMm === null) return emptyPinJointForm;
  const here = { thicknessMm: bossLengthMm, widthMm: bossOutsideMm, endMm: centreToEdgeMm ?? bossOutsideMm / 2 };
  const [eye, fork] = otherHalf.worn === 'eye' ? [here, otherHalf] : [otherHalf, here];
  const worn = otherHalf.worn === 'eye' ? 'eyeBoreMm' : 'forkBoreMm';
  return {
    ...emptyPinJointForm,
    asDrawn: {
      ...{ pinMm: text(standardMm), gapEachSideMm: text(otherHalf.gapEachSideMm) },
      ...{ eyeBoreMm: text(standardMm), eyeThicknessMm: text(eye.thicknessMm), eyeWidthMm: text(eye.widthMm) },
      ...{ eyeEndMm: text(eye.endMm), forkBoreMm: text(standardMm), forkThicknessMm: text(fork.thicknessMm) },
      ...{ forkWidthMm: text(fork.widthMm), forkEndMm: text(fork.endMm) },
    },
    repaired: {
      ...(pin && { pinMm: text(pin.nominalMm) }),
      ...(bore && { [worn]: text(bore.nominalMm) }),
    },
    ...(facts.yieldMpa !== null && { lugYieldText: text(facts.yieldMpa) }),
  };
}
