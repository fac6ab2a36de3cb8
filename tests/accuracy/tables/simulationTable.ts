import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { forecastSet } from '../forecastSet.ts';
import { lineForecast } from '../lineForecast.ts';
import { plainForecastSet } from '../plainForetell.ts';
import { places, printTable } from '../printTable.ts';
import { scoreHours } from '../scores.ts';
import { simulatedClass, truths } from '../simulatedClass.ts';

/** Hours at limit of simulated classes: a gamma process, parts each on a machine of their own; beside them the plain model on the same classes. */
export function simulationTable(settings: ModelSettings, full: boolean): void {
  const classes = full ? 96 : 24;
  const rows = truths.map(({ title, truth, parts, seedBase, barPinball }) => {
    const sets = Array.from({ length: classes }, (_, k) => simulatedClass(seedBase + k, parts, truth));
    const line = scoreHours(sets.flatMap(lineForecast));
    const model = scoreHours(sets.flatMap((set) => forecastSet(set, settings).cases));
    const plain = scoreHours(sets.flatMap((set) => plainForecastSet(set, settings)));
    return [
      title,
      model.parts,
      `${places(line.mae, 0)} / ${places(line.cover, 2)}`,
      `${places(model.mae, 0)} / ${places(model.cover, 2)}`,
      places(model.belowLow, 2),
      places(model.aboveHigh, 2),
      places(line.pinball, 0),
      places(model.pinball, 0),
      `${places(plain.mae, 0)} / ${places(plain.cover, 2)}`,
      places(plain.belowLow, 2),
      places(plain.pinball, 0),
      `${barPinball}`,
      title === 'linear, 4'
        ? 'KNOWN LOSS by mae in some draws: four parts of even wear'
        : title.startsWith('curved')
          ? 'KNOWN LOSS: strong curvature'
          : '',
    ];
  });
  printTable(
    `Hours at limit, simulated gamma process, ${classes} classes a row`,
    [
      'truth, parts',
      'n',
      'line mae / cover',
      'forecast mae / cover',
      'below low',
      'above high',
      'pinball line',
      'forecast',
      'plain mae / cover',
      'below low',
      'pinball',
      'other seeds',
      '',
    ],
    rows,
  );
}
