import type { ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { intervalBar } from '#core/axis/intervalBar.ts';
import { hoursScale } from '#core/axis/scale.ts';
import { samples } from '#renderer/screens/marks/samples.tsx';
import { DoNotUseBox } from './DoNotUseBox.tsx';
import { IntervalBar } from './IntervalBar.tsx';
import { ItemRing, RingSign } from './ItemRing.tsx';
import { Picture } from './Picture.tsx';
import { Sketch } from './Sketch.tsx';

const drawn = (mark: ReactNode, label: string | null = null) =>
  renderToStaticMarkup(
    <Picture width={140} height={44} label={label}>
      {mark}
    </Picture>,
  );
const scale = hoursScale({ fromHours: 0, toHours: 1000, fromPx: 0, toPx: 140 });
const bar = (own: number, low = 300) => (
  <IntervalBar
    bar={intervalBar({ low, middle: 500, high: 800, nowHours: 400, decides: 'middle', ownReadings: own }, scale)}
    y={20}
  />
);

describe('a mark', () => {
  it.each(Object.keys(samples))('%s draws something, with no broken number in it', (name) => {
    const svg = drawn(samples[name as keyof typeof samples]);
    expect(svg.replace(/<pattern.*?<\/pattern>/g, '')).toMatch(/<(path|rect|circle)/);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('says what a bar rests on by its inside, not by a colour', () => {
    expect(drawn(bar(3))).toContain('class="bar-own"');
    expect(drawn(bar(2))).toMatch(/class="bar-part" style="fill:url\(#\S+part\)"/);
    expect(drawn(bar(0))).toContain('class="bar-borrowed"');
  });

  it('cross-hatches what may have passed, on paper so that nothing shows through', () => {
    expect(drawn(bar(3, 300))).toMatch(
      /class="paper" d="\S[^"]*"\/?>(<\/path>)?<path class="bar-past" style="fill:url\(#\S+past\)"/,
    );
    expect(drawn(bar(3, 450))).not.toContain('bar-past');
  });

  it('never names a colour of its own: all come from the tokens', () => {
    for (const mark of Object.values(samples)) expect(drawn(mark)).not.toMatch(/#[0-9a-f]{3,6}["; ]|rgb\(/i);
  });
});

describe('a picture', () => {
  it('is one sentence to a screen reader, or nothing where its figures stand beside it', () => {
    expect(drawn(null, 'Slide strip: 150 to 880 hours left')).toContain(
      'role="img" aria-label="Slide strip: 150 to 880 hours left"',
    );
    expect(drawn(null)).toContain('aria-hidden="true"');
  });

  it('has the hatches it shows and no other, with ids no other picture on the page has', () => {
    const page = renderToStaticMarkup(
      <>
        <Picture width={10} height={10} label={null}>
          {bar(2)}
        </Picture>
        <Picture width={10} height={10} label={null}>
          {bar(2)}
        </Picture>
      </>,
    );
    const ids = [...page.matchAll(/<pattern id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    expect([...page.matchAll(/url\(#([^)]+)\)/g)].map(([, used]) => used)).toEqual(ids);
    expect(ids).toHaveLength(4); // of each bar what is ahead and what may have passed
  });
});

describe('an item ring', () => {
  it('is filled for this winter, double for worth doing with it, crossed for do not use', () => {
    const ring = (state: 'now' | 'with-it' | 'stop') => drawn(<ItemRing item={4} state={state} x={0} y={0} />);
    expect(ring('now')).toContain('class="ring now"');
    expect(ring('with-it').match(/<circle/g)).toHaveLength(2);
    expect(ring('stop')).toContain('class="ring-cross"');
  });
  it('in a line of text is passed over unless it is named', () => {
    expect(renderToStaticMarkup(<RingSign item={4} state="now" />)).toContain('aria-hidden="true"');
    expect(renderToStaticMarkup(<RingSign item={4} state="now" label="item 4" />)).toContain('aria-label="item 4"');
  });
});

it('do not use has its words beside the struck box', () => {
  expect(drawn(<DoNotUseBox x={0} y={20} width={300} finding="crack, 34 mm" />)).toContain('DO NOT USE: crack, 34 mm');
});

it('a drawing has a ring on a leader for each of its items, the chosen one blue', () => {
  const svg = renderToStaticMarkup(
    <Sketch
      sketch={{
        width: 100,
        height: 50,
        shapes: [
          { d: 'M0 0H100V50H0z', style: 'section' },
          { d: 'M0 25H100', style: 'centre' },
        ],
        items: [
          { item: 1, at: { x: 10, y: 10 }, ring: { x: 20, y: 40 } },
          { item: 2, at: { x: 60, y: 10 }, ring: { x: 70, y: 40 } },
        ],
      }}
      states={new Map([[1, 'now']])}
      chosen={2}
      width={200}
      label="Drawing of the loader"
    />,
  );
  expect(svg).toContain('aria-label="Drawing of the loader"');
  expect(svg.match(/class="l-dim"/g)).toHaveLength(2);
  expect(svg).toContain('class="ring now"');
  expect(svg).toContain('class="ring chosen"');
  expect(svg).toMatch(/class="s-section" style="fill:url\(#\S+section\)"/);
});
