import type { ModelSettings } from '#core/fit/modelSettings.ts';
import type { WearSeries } from '#core/series/wearSeries.ts';
import { forecastSet } from '../forecastSet.ts';
import { places, printTable } from '../printTable.ts';
import { livesApart, measuredWhenWorn, renewedClass } from '../renewedParts.ts';
import { type HoursCase, scoreHours } from '../scores.ts';
import { type ShopSet, shopH, workshopA } from '../shopSets.ts';

/**
 * Does a renewed part say anything of the one that followed it in its position? Before: each life by itself. Now: they share
 * what is held of their machine; how much they share is learned.
 */
export function renewedTable(settings: ModelSettings, full: boolean): void {
  const classes = full ? 48 : 5;
  const simulated = (positions: number, parts: number) =>
    Array.from({ length: classes }, (_, k) => renewedClass(70_000 + k, 24, { positions, parts }));
  const rows = (
    [
      ['simulated: positions share nothing (0, parts 0.35)', () => simulated(0, 0.35)],
      ['simulated: they share a little (0.15, parts 0.32)', () => simulated(0.15, 0.32)],
      ['simulated: they share much (0.30, parts 0.18)', () => simulated(0.3, 0.18)],
      ['workshop A: some renewed once', () => [workshopA()]],
      ['shop H: 8 positions a machine, renewals', () => [shopH()]],
    ] as const
  ).map(([title, sets]) => {
    const shops = sets();
    const now = casesOf(shops, settings);
    const before = casesOf(shops.map(livesApart), settings);
    const [was, is] = [scoreHours(before), scoreHours(now)];
    const some = now.some(unread);
    const [wasUnread, isUnread] = some ? [scoreHours(before.filter(unread)), scoreHours(now.filter(unread))] : [];
    return [
      title,
      is.parts,
      places(was.pinball, 1),
      places(is.pinball, 1),
      places(was.cover, 2),
      places(is.cover, 2),
      wasUnread ? places(wasUnread.pinball, 1) : '-',
      isUnread ? places(isUnread.pinball, 1) : '-',
    ];
  });
  printTable(
    'Renewed parts of one position: each life by itself (before), and sharing their machine (now)',
    ['shop', 'n', 'pinball h before', 'now', 'cover before', 'now', 'never read: before', 'now'],
    rows,
  );
  const worn = scoreHours(
    casesOf(
      Array.from({ length: classes }, (_, k) => measuredWhenWorn(71_000 + k, 24)),
      settings,
    ),
  );
  printTable(
    'Parts measured once each, and only when worn: the age at measuring tells the rate',
    ['shop', 'n', 'mae h', 'cover', 'below low', 'above high', 'pinball h', ''],
    [
      [
        'simulated, even wear',
        worn.parts,
        places(worn.mae, 0),
        places(worn.cover, 2),
        places(worn.belowLow, 2),
        places(worn.aboveHigh, 2),
        places(worn.pinball, 1),
        'KNOWN LOSS: sizes are taken as taken when a visit came, not when a part looked worn',
      ],
    ],
  );
  console.log(
    '  A position is no unknown of its own: where it is alone on its machine the machine carries what its parts share.',
  );
}

type Case = HoursCase & { series: WearSeries };

const casesOf = (shops: readonly ShopSet[], settings: ModelSettings): Case[] =>
  shops.flatMap((shop) => forecastSet(shop, settings).cases);

const unread = ({ series }: Case): boolean => series.readings.length === 0;
