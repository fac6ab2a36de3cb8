import type { fitPress } from '#core/contract/fits.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

type Request = AskOf<typeof fitPress>;

export type PressText = `${'bossOutside' | 'bushBore' | 'length' | 'room' | `${'boss' | 'bush'}${'Rz' | 'Yield'}`}Text`;

/** The form as typed; what is not a figure stays as text. */
export type PressForm = Pick<Request, 'bossMaterial' | 'bushMaterial' | 'lubrication'> &
  Record<PressText, string> & { bushBoreClass: string; wantedBoreClass: string };

export const emptyPressForm: PressForm = {
  ...{ bossOutsideText: '', bushBoreText: '', lengthText: '', roomText: '20', bossRzText: '', bushRzText: '' },
  ...{ bossYieldText: '', bushYieldText: '' },
  ...{ bushBoreClass: 'E6', wantedBoreClass: 'H8' },
  ...{ bossMaterial: 'structural-steel', bushMaterial: 'structural-steel', lubrication: 'oiled' },
};

const figure = (text: string): number | null => {
  const read = readNumber(text, 'mm');
  return read.ok ? read.value : null;
};

/** Nothing typed: nothing is taken off. */
const roughness = (text: string): number | null => {
  const um = text.trim() === '' ? 0 : figure(text);
  return um !== null && um >= 0 && um <= 500 ? um : null;
};

/** Nothing typed: the material's usual one. */
const yieldOrNull = (text: string): number | null | undefined => {
  const mpa = text.trim() === '' ? null : figure(text);
  return mpa === null && text.trim() !== '' ? undefined : mpa === null || (mpa > 0 && mpa <= 3000) ? mpa : undefined;
};

const classOrNull = (text: string): string | null => (text.trim() === '' ? null : text.trim());

/** What is asked, once every size is there and can be one; null before. */
export function pressRequest(fit: string, form: PressForm): Request | null {
  const { bossOutsideText, bushBoreText, lengthText, roomText, bossRzText, bushRzText, ...others } = form;
  const { bushBoreClass, wantedBoreClass, bossYieldText, bushYieldText, ...rest } = others;
  const [bossYieldMpa, bushYieldMpa] = [bossYieldText, bushYieldText].map(yieldOrNull);
  const [bossRzUm, bushRzUm] = [bossRzText, bushRzText].map(roughness);
  const [bossOutsideMm, bushBoreMm, lengthMm, roomC] = [bossOutsideText, bushBoreText, lengthText, roomText].map(
    figure,
  );
  if (bossOutsideMm == null || bushBoreMm == null || lengthMm == null || roomC == null) return null;
  if (!(bossOutsideMm > 0 && bossOutsideMm <= 10_000 && bushBoreMm >= 0 && bushBoreMm <= 500)) return null;
  if (!(lengthMm > 0 && lengthMm <= 10_000 && roomC >= -30 && roomC <= 50)) return null;
  if (bossRzUm == null || bushRzUm == null || bossYieldMpa === undefined || bushYieldMpa === undefined) return null;
  return {
    ...{ fit, bossOutsideMm, bushBoreMm, lengthMm, roomC, bossYieldMpa, bushYieldMpa, ...rest },
    roughnessUm: { bossRzUm, bushRzUm },
    bushBoreClass: classOrNull(bushBoreClass),
    wantedBoreClass: classOrNull(wantedBoreClass),
  };
}
