import { random } from './random.ts';
import { LAST_DAY, type MachinePlan } from './scenario.ts';
import { dayNumber, isoDay } from './use.ts';

export type HoursRow = {
  machine: string;
  date: string;
  dial_hours: number | '';
  event: 'reading' | 'estimate' | 'new-meter' | 'rollover';
  new_dial_hours: number | '';
  hours_error: number | '';
};

/**
 * What was written down of a machine's hours: at every strip-down, most autumns, some springs and call-outs.
 * `dialOn(day)` gives the figure written on that day; null where the dial was dead or there is none.
 */
export function dialLog(seed: number, plan: MachinePlan, hoursAt: (day: string) => number, otherDays: string[]) {
  const draw = random(seed, `${plan.machine}/dial`);
  const days = new Set<string>([plan.firstDay, ...plan.visits.map((visit) => visit.on), ...otherDays]);
  for (const on of roundsDays(draw.uniform, plan)) days.add(on);
  const broken = plan.meter?.find((at) => at.what === 'broken');
  if (broken) for (const on of ['2023-10-17', broken.until]) days.add(on);
  for (const at of plan.meter ?? []) if (at.what === 'new-meter') days.add(at.on);

  if (plan.noHours) return { rows: [], dialOn: () => null };
  const rows: HoursRow[] = [];
  const dials = new Map<string, number | null>();
  const row = (date: string, event: HoursRow['event'], dial: number | '', more?: Partial<HoursRow>) =>
    rows.push({ machine: plan.machine, date, dial_hours: dial, event, new_dial_hours: '', hours_error: '', ...more });
  let before = plan.hoursBefore ?? 0;
  let lastDial = -1;
  let lastHours = plan.machineHoursAtFirst;
  let estimate = plan.machineHoursAtFirst;
  for (const date of [...days].sort()) {
    const hours = hoursAt(date);
    const meter = plan.meter?.find((at) => at.what === 'new-meter' && at.on === date);
    if (plan.meterDigits === null) {
      // No meter: loads carried times a guess, a sixth out each time.
      estimate += (hours - lastHours) * Math.exp(0.16 * draw.normal());
      lastHours = hours;
      const dial = Math.max(lastDial, Math.round(estimate / 10) * 10);
      row(date, 'estimate', dial);
      dials.set(date, dial);
      lastDial = dial;
    } else if (broken && date >= broken.on && date <= broken.until) {
      const error = Math.round((60 + 0.15 * (hours - hoursAt(broken.on))) / 10) * 10;
      const dial = Math.round((hours - before + 0.6 * error * draw.normal()) / 10) * 10;
      row(date, 'estimate', Math.max(lastDial, dial), { hours_error: error });
      dials.set(date, null);
      lastDial = Math.max(lastDial, dial);
      if (date === broken.until) {
        // Bridged over no time at all: the estimate of the same day is where the old meter would have stood.
        row(date, 'new-meter', '', { new_dial_hours: 0 });
        before = hours;
        lastDial = -1;
      }
    } else if (meter?.what === 'new-meter') {
      row(date, 'new-meter', meter.lastDialKnown ? Math.round(hours - before) : '', {
        new_dial_hours: meter.newDialHours,
      });
      before = hours - meter.newDialHours;
      dials.set(date, null);
      lastDial = meter.newDialHours;
    } else {
      const dial = Math.round(hours - before) % 10 ** plan.meterDigits;
      row(date, dial < lastDial ? 'rollover' : 'reading', dial);
      dials.set(date, dial);
      lastDial = dial;
    }
  }
  return {
    rows,
    dialOn: (day: string): number | null => {
      const dial = dials.get(day);
      if (dial === undefined) throw new Error(`${plan.machine}: nobody wrote down the dial on ${day}`);
      return dial;
    },
  };
}

/** Days on which the shop wrote hours down without opening anything. */
function roundsDays(uniform: () => number, plan: MachinePlan): string[] {
  const days: string[] = [];
  const last = plan.lastHoursOn ?? LAST_DAY;
  for (let year = 2019; year <= 2026; year++) {
    const seasons: [number, string, number][] = [
      [plan.work === 'baler' ? 0.1 : 0.45, `${year}-03-05`, 40],
      [0.35, `${year}-06-10`, 60],
      [year === 2026 ? 1 : 0.8, `${year}-10-06`, 26],
    ];
    for (const [chance, from, spread] of seasons) {
      const wanted = uniform() < chance;
      const on = isoDay(dayNumber(from) + Math.floor(spread * uniform()));
      if (wanted && on > plan.firstDay && on <= last) days.push(on);
    }
  }
  if (plan.lastHoursOn) days.push(plan.lastHoursOn);
  return days;
}
