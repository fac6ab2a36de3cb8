import type { AssemblyKind } from '#core/contract/shop.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

type Tree = NonNullable<AssemblyKind['stripDown']>;

/** A step as typed: steps are named by their numbers, 1 and up, in the order they stand. */
export type StepForm = {
  code: string;
  name: string;
  when: 'off' | 'back';
  low: string;
  typical: string;
  high: string;
  /** numbers of the steps before it, and of those it brings with it */
  needs: string;
  brings: string;
  source: string;
};
export type TreeForm = {
  steps: StepForm[];
  /** by item number: numbers of the steps that reach it */
  reach: ReadonlyMap<number, string>;
  always: string;
};

export const EMPTY_STEP: StepForm = {
  ...{ code: '', name: '', when: 'off', low: '', typical: '', high: '', needs: '', brings: '', source: '' },
};

export function treeForm(tree: Tree | undefined): TreeForm {
  const steps = tree?.steps ?? [];
  const numbers = (codes: readonly string[]) =>
    codes.map((code) => steps.findIndex((one) => one.code === code) + 1).join(', ');
  return {
    steps: steps.map(({ code, name, when, hours, needs, brings, source }) => ({
      ...{ code, name, when, source, needs: numbers(needs), brings: numbers(brings) },
      ...{ low: String(hours.low), typical: String(hours.typical), high: String(hours.high) },
    })),
    reach: new Map((tree?.reach ?? []).map(({ item, needs }) => [item, numbers(needs)])),
    always: numbers(tree?.always ?? []),
  };
}

/**
 * The tree as typed, for the items there are.
 * @returns what is wrong, by step number or item, where something cannot be read
 */
export function treeOf(form: TreeForm, items: readonly number[]): { tree: Tree } | { odd: string } {
  const codes = form.steps.map(({ code }, place) => (code === '' ? `step-${place + 1}` : code));
  const named = (text: string): string[] | null => {
    const found = text
      .split(/[\s,;]+/)
      .filter((word) => word !== '')
      .map((word) => (/^\d+$/.test(word) ? codes[Number(word) - 1] : undefined));
    return found.includes(undefined) ? null : found.filter((code) => code !== undefined);
  };
  const steps: Tree['steps'] = [];
  for (const [place, step] of form.steps.entries()) {
    const [low, typical, high] = [step.low, step.typical, step.high].map((text) => readNumber(text, 'h'));
    const [needs, brings] = [named(step.needs), named(step.brings)];
    const sound =
      low?.ok && typical?.ok && high?.ok && low.value >= 0 && low.value <= typical.value && typical.value <= high.value;
    if (step.name.trim() === '' || !sound || !needs || !brings) return { odd: String(place + 1) };
    const hours = { low: low.value, typical: typical.value, high: high.value };
    steps.push({
      ...{ code: codes[place]!, name: step.name, when: step.when, hours, needs, brings },
      source: step.source,
    });
  }
  const reach: Tree['reach'] = [];
  for (const item of items) {
    const needs = named(form.reach.get(item) ?? '');
    if (!needs) return { odd: String(item) };
    reach.push({ item, needs });
  }
  const always = named(form.always);
  return always ? { tree: { steps, reach, always } } : { odd: form.always };
}
