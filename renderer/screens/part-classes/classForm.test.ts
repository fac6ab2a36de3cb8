import { describe, expect, it } from 'vitest';
import { classRequest, emptyClassForm } from './classForm.ts';

const strip = {
  ...emptyClassForm,
  name: ' Nylon slide strip ',
  wearFromText: '2',
  wearToText: '3,0',
  hoursFromText: '5 000',
  hoursToText: '6000 h',
  toleranceText: '0,2',
};

describe('a part class as typed', () => {
  it('is read with comma or point and gaps', () => {
    expect(classRequest(strip, '.').request).toEqual({
      partClassId: null,
      name: 'Nylon slide strip',
      tradeWear: { wearFromMm: 2, wearToMm: 3, hoursFrom: 5000, hoursTo: 6000, source: '' },
      newSizeTolMm: 0.2,
    });
  });
  it('may say nothing of the trade, but not half', () => {
    expect(classRequest({ ...emptyClassForm, name: 'Pin' }, '.').request?.tradeWear).toBeNull();
    expect(classRequest({ ...strip, hoursToText: '' }, '.').remarks).toEqual(['tradeHalf']);
    expect(classRequest({ ...strip, wearFromText: '4' }, '.').remarks).toEqual(['tradeOrder']);
  });
  it('needs a name and figures that are figures', () => {
    expect(classRequest({ ...strip, name: ' ', wearToText: 'three' }, '.').remarks).toEqual([
      'nameMissing',
      'not-a-number',
      'tradeHalf',
    ]);
  });
});
