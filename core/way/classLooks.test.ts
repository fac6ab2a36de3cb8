import { describe, expect, it } from 'vitest';
import { forecastSet } from '#tests/accuracy/forecastSet.ts';
import { measuredWhenWorn as aClassMeasuredWhenWorn, renewedClass } from '#tests/accuracy/renewedParts.ts';
import { scoreHours } from '#tests/accuracy/scores.ts';
import { aLoaderShop, LOADER_FILES } from '#tests/support/aLoaderShop.ts';
import { defaultModelSettings } from '../fit/modelSettings.ts';
import { measuredWhenWorn } from '../forecast/guards.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { forecastWhyHandler } from '../use-cases/forecastWhy.ts';
import { learningOfAll } from '../use-cases/learning/shopLearning.ts';
import { cautionText } from '../words/cautionText.ts';
import { whyStep } from '../words/whyText.ts';
import { howLookedAt } from './classLooks.ts';

const LIMIT_MM = 2.5;
const looksOf = (parts: readonly WearSeries[]) => ({
  whenWorn: parts.filter((part) => howLookedAt(part, LIMIT_MM, defaultModelSettings) === 'whenWorn').length,
  onTheWay: parts.filter((part) => howLookedAt(part, LIMIT_MM, defaultModelSettings) === 'onTheWay').length,
});

describe('a class whose parts were measured once, when they were worn', () => {
  it('is told from one measured at visits that come anyway', () => {
    const worn = looksOf(aClassMeasuredWhenWorn(71_000, 24).series);
    expect(worn).toEqual({ whenWorn: 46, onTheWay: 0 });
    expect(measuredWhenWorn(worn, defaultModelSettings)).toEqual({
      code: 'measured-when-worn',
      facts: { whenWorn: 46, parts: 46, wornShare: 0.75 },
    });
    expect(
      measuredWhenWorn(
        looksOf(renewedClass(70_000, 24, { positions: 0.15, parts: 0.32 }).series),
        defaultModelSettings,
      ),
    ).toBeNull();
  });

  it('is forecast late, as is said of it', () => {
    const set = aClassMeasuredWhenWorn(71_000, 16);
    const found = scoreHours(forecastSet(set, defaultModelSettings).cases);
    expect(found.belowLow).toBeGreaterThan(0.3);
    expect(found.aboveHigh).toBeLessThan(0.1);
  });

  it('is said nothing of while few are known, or one part in five was measured on the way', () => {
    expect(measuredWhenWorn(undefined, defaultModelSettings)).toBeNull();
    expect(measuredWhenWorn({ whenWorn: 4, onTheWay: 0 }, defaultModelSettings)).toBeNull();
    expect(measuredWhenWorn({ whenWorn: 8, onTheWay: 2 }, defaultModelSettings)).toBeNull();
    expect(measuredWhenWorn({ whenWorn: 9, onTheWay: 2 }, defaultModelSettings)).not.toBeNull();
  });
});

/** Six loaders, each pin measured once at its limit and renewed there; of an even number of them also earlier. Invented. */
function loaders(measuredEarlier: number) {
  const names = Array.from({ length: 6 }, (_, k) => `Loader ${k + 1}`);
  const rows = (of: (name: string, k: number) => string[]) => `${names.flatMap(of).join('\n')}\n`;
  const head = (text: string) => text.slice(0, text.indexOf('\n') + 1);
  const pin = (name: string) => `${name},Front loader,Boom foot pin,diameter`;
  return aLoaderShop({
    'machines.csv':
      head(LOADER_FILES['machines.csv']) + rows((name) => [`${name},Farm of ${name},Harrod,V1,,2018,5,,1`]),
    'hours.csv': `${head(LOADER_FILES['hours.csv'])}${rows((name, k) => [
      `${name},2018-11-01,0,reading,,`,
      `${name},2024-11-01,${4000 + 400 * k},reading,,`,
      `${name},2026-11-01,${5500 + 400 * k},reading,,`,
    ])}`,
    'points.csv':
      head(LOADER_FILES['points.csv']) +
      rows((name) => [`${pin(name)},Greased pin,no,down,40.0,0.1,39.0,38.5,shop's rule,0.03,0`]),
    'sizes.csv':
      head(LOADER_FILES['sizes.csv']) +
      rows((name, k) => [
        ...(k < measuredEarlier ? [`${pin(name)},,2021-11-01,,39.60,as-found,`] : []),
        `${pin(name)},,2024-11-01,${4000 + 400 * k},39.05,as-found,`,
        `${pin(name)},,2024-11-01,${4000 + 400 * k},40.00,renewed,`,
      ]),
  });
}

describe('on the record', () => {
  const whyOf = async (measuredEarlier: number) => {
    const context = loaders(measuredEarlier);
    await learningOfAll(context);
    return forecastWhyHandler(context, { pointId: 1 });
  };

  it('such a class is said to be late beside its forecasts and in why this number, in words', async () => {
    const { forecast, steps } = await whyOf(0);
    const caution = forecast.cautionFacts.find(({ code }) => code === 'measured-when-worn')!;
    expect(cautionText(caution.code, caution.facts)).toMatch(
      /^Its hours are likely late: of 6 such parts .* all were measured once only, already worn/,
    );
    const step = steps.find(({ code }) => code === 'class-looks')!;
    expect(whyStep(step, '.')).toMatchObject({ head: 'When they were measured' });
    expect(whyStep(step, '.').sentence).toMatch(/^Of 6 such parts .*, 6 were measured once only: past 75.% of the way/);
  });

  it('with some of them measured on the way, nothing is', async () => {
    const { forecast, steps } = await whyOf(2);
    expect(forecast.cautions).not.toContain('measured-when-worn');
    expect(steps.map(({ code }) => code)).not.toContain('class-looks');
  });
});
