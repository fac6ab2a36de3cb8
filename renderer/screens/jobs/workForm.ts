import type { Rebuild, RebuildWork } from '#core/contract/rebuild.ts';
import { readNumber } from '#renderer/words/readNumber.ts';

/** A line of work as typed: figures as their text, so that nothing unreadable is lost. */
export type CutForm = { what: string; centre: string; lower: string; upper: string };
export type MakeForm = {
  kind: RebuildWork['makes'][number]['kind'];
  what: string;
  material: string;
  count: string;
  outside: string;
  inside: string;
  length: string;
  width: string;
  limits: string;
  stock: string;
  /** empty: made here */
  leadDays: string;
};
export type WorkForm = {
  positionId: number | null;
  option: string;
  what: string;
  takeOffs: string;
  ownHours: string;
  partsPrice: string;
  safety: boolean;
  cuts: CutForm[];
  makes: MakeForm[];
  renews: RebuildWork['renews'];
  pressing: RebuildWork['pressing'];
  cautions: string[];
};

export const EMPTY_CUT: CutForm = { what: '', centre: '', lower: '', upper: '' };
export const EMPTY_MAKE: MakeForm = {
  ...{ kind: 'bush', what: '', material: '', count: '1', outside: '', inside: '', length: '', width: '' },
  ...{ limits: '', stock: '', leadDays: '' },
};
const EMPTY: WorkForm = {
  ...{ positionId: null, option: '', what: '', takeOffs: '', ownHours: '', partsPrice: '', safety: false },
  ...{ cuts: [], makes: [], renews: [], pressing: null, cautions: [] },
};

const typed = (figure: number | null): string => (figure === null ? '' : String(figure));

export function formOf(line: Rebuild['lines'][number] | null): WorkForm {
  if (line === null) return EMPTY;
  return {
    ...{ positionId: line.positionId, option: line.option, what: line.what, safety: line.safety },
    takeOffs: line.takeOffs.map(({ name, hours }) => `${name}; ${hours}`).join('\n'),
    ownHours: typed(line.ownHours),
    partsPrice: typed(line.partsPrice),
    cuts: line.cuts.map(({ what, centre, lowerMm, upperMm }) => ({
      ...{ what, centre, lower: typed(lowerMm), upper: typed(upperMm) },
    })),
    makes: line.makes.map((make) => ({
      ...{ kind: make.kind, what: make.what, material: make.material, count: typed(make.count) },
      ...{
        outside: typed(make.outsideMm),
        inside: typed(make.insideMm),
        length: typed(make.lengthMm),
        width: typed(make.widthMm),
      },
      ...{ limits: make.limits, stock: make.stock, leadDays: make.bought ? typed(make.leadDays ?? 0) : '' },
    })),
    renews: line.renews,
    pressing: line.pressing,
    cautions: line.cautions,
  };
}

const figure = (text: string, unit: 'mm' | 'h'): number | null => {
  const read = readNumber(text, unit);
  return read.ok && read.value >= 0 ? read.value : null;
};

/** The work as the program takes it; null: something needed is missing or cannot be read. */
export function workOf(form: WorkForm): RebuildWork | null {
  const takeOffs = form.takeOffs.split('\n').flatMap(takeOffOf);
  const cuts = form.cuts.map(({ what, centre, lower, upper }) => {
    const [lowerMm, upperMm] = [figure(lower, 'mm'), figure(upper, 'mm')];
    return what.trim() === '' || lowerMm === null || upperMm === null || lowerMm > upperMm
      ? null
      : { what, centre, lowerMm, upperMm };
  });
  const makes = form.makes.map(makeOf);
  const ownHours = form.ownHours.trim() === '' ? 0 : figure(form.ownHours, 'h');
  const partsPrice = form.partsPrice.trim() === '' ? 0 : figure(form.partsPrice, 'mm');
  if (form.what.trim() === '' || ownHours === null || partsPrice === null) return null;
  if (takeOffs.includes(null) || cuts.includes(null) || makes.includes(null)) return null;
  return {
    ...{ positionId: form.positionId, option: form.option, what: form.what, ownHours, partsPrice, safety: form.safety },
    takeOffs: takeOffs.filter((one) => one !== null),
    cuts: cuts.filter((one) => one !== null),
    makes: makes.filter((one) => one !== null),
    renews: form.renews,
    pressing: form.pressing,
    cautions: form.cautions,
  };
}

/** "carrier out; 1.5": nothing for an empty line, null for one that cannot be read. */
function takeOffOf(line: string): ({ name: string; hours: number } | null)[] {
  if (line.trim() === '') return [];
  const at = line.lastIndexOf(';');
  const name = line.slice(0, at).trim();
  const hours = figure(line.slice(at + 1), 'h');
  return [at < 0 || name === '' || hours === null ? null : { name, hours }];
}

function makeOf(form: MakeForm): RebuildWork['makes'][number] | null {
  const count = Number(form.count);
  const sizes = [form.outside, form.inside, form.length, form.width].map((text) =>
    text.trim() === '' ? null : (figure(text, 'mm') ?? Number.NaN),
  );
  const lead = form.leadDays.trim() === '' ? null : Number(form.leadDays);
  const sound =
    form.what.trim() !== '' &&
    Number.isInteger(count) &&
    count > 0 &&
    sizes.every((size) => size === null || Number.isFinite(size)) &&
    (lead === null || (Number.isInteger(lead) && lead >= 0));
  if (!sound) return null;
  return {
    ...{ kind: form.kind, what: form.what, material: form.material, count, limits: form.limits, stock: form.stock },
    ...{
      outsideMm: sizes[0] ?? null,
      insideMm: sizes[1] ?? null,
      lengthMm: sizes[2] ?? null,
      widthMm: sizes[3] ?? null,
    },
    ...{ bought: lead !== null, leadDays: lead },
  };
}
