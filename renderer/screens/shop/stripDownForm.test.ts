import { expect, test } from 'vitest';
import { frontLoader } from '#core/shop/assembly-kinds/frontLoader.ts';
import { EMPTY_STEP, treeForm, treeOf } from './stripDownForm.ts';

const typed = {
  steps: [
    { ...EMPTY_STEP, name: 'wash', low: '0,3', typical: '0.5', high: '1' },
    { ...EMPTY_STEP, name: 'ram out', low: '0.3', typical: '0.5', high: '1', needs: '1' },
  ],
  reach: new Map([[7, '2']]),
  always: '1',
};

test('steps are named by their numbers, and kept by codes of their own', () => {
  expect(treeOf(typed, [7])).toEqual({
    tree: {
      steps: [
        expect.objectContaining({
          code: 'step-1',
          name: 'wash',
          hours: { low: 0.3, typical: 0.5, high: 1 },
          needs: [],
        }),
        expect.objectContaining({ code: 'step-2', needs: ['step-1'] }),
      ],
      reach: [{ item: 7, needs: ['step-2'] }],
      always: ['step-1'],
    },
  });
});

test('a step that is not there, hours out of order, a step without a name: it is said where', () => {
  expect(treeOf({ ...typed, reach: new Map([[7, '3']]) }, [7])).toEqual({ odd: '7' });
  expect(treeOf({ ...typed, steps: [{ ...typed.steps[0]!, low: '2' }] }, [])).toEqual({ odd: '1' });
  expect(treeOf({ ...typed, steps: [{ ...typed.steps[0]!, name: ' ' }] }, [])).toEqual({ odd: '1' });
});

test('a tree that is opened reads as it was', () => {
  const { stripDown, positions } = frontLoader;
  expect(stripDown).toBeDefined();
  expect(
    treeOf(
      treeForm(stripDown as never),
      positions.map(({ item }) => item),
    ),
  ).toEqual({ tree: stripDown });
});
