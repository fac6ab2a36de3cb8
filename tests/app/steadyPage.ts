import type { Page } from 'playwright-core';

/**
 * A test that presses a key while an answer is still on its way presses it on a screen nobody would have waited for: a form
 * that is about to close, a key that is dead while its entry is kept. So whatever is pressed, typed or read once in a window
 * waits until the window is at rest: nothing asked for that has not come, and what came is drawn. Waiting for something
 * (`waitFor`, `expect.poll`) is the test's own.
 */
export async function makeSteady(page: Page): Promise<void> {
  await page.context().addInitScript(countAsked);
  steady.add(page);
  for (const name of ['press', 'type'] as const) waitsFirst(page.keyboard, name, () => page);
  waitsFirst(page, 'title', () => page);
  const locators = Object.getPrototypeOf(page.locator('body')) as ReturnType<Page['locator']>;
  if (patched.has(locators)) return;
  patched.add(locators);
  for (const name of [...ACTS, ...READS]) waitsFirst(locators, name, (locator) => locator.page());
}

const ACTS = ['click', 'fill', 'check', 'press', 'focus', 'blur', 'hover', 'selectOption', 'setInputFiles'] as const;
const READS = [
  ...['count', 'all', 'textContent', 'allTextContents', 'inputValue', 'getAttribute', 'boundingBox'],
  ...['isChecked', 'isDisabled', 'isEnabled', 'isVisible', 'evaluate', 'evaluateAll'],
] as ('count' | 'textContent')[];

const steady = new WeakSet<Page>();
const patched = new WeakSet<object>();

function waitsFirst<T extends object, K extends keyof T>(owner: T, name: K, pageOf: (self: T) => Page): void {
  const act = owner[name] as (...its: unknown[]) => Promise<unknown>;
  owner[name] = async function (this: T, ...its: unknown[]) {
    const page = pageOf(this);
    if (steady.has(page)) await atRest(page);
    return act.apply(this, its);
  } as T[K];
}

/** Resolves once the window has nothing more to wait for, neither an answer nor a screen's code, and has drawn what it has. */
export async function atRest(page: Page): Promise<void> {
  const rested = async () => {
    const drawn = () => new Promise((next) => requestAnimationFrame(() => setTimeout(next)));
    do await drawn();
    while ((window as Counting).underWay || document.querySelector('[data-code-awaited]'));
  };
  // while it is loaded anew there is no page to ask
  await page.evaluate(rested).catch(() => page.waitForLoadState('load').then(() => page.evaluate(rested)));
}

type Counting = Window & { underWay?: number };

/** Runs in the page before its own scripts. */
function countAsked(): void {
  const counting = window as Counting;
  const fetched = window.fetch;
  counting.underWay = 0;
  window.fetch = async (...its) => {
    counting.underWay = (counting.underWay ?? 0) + 1;
    // given back only after whoever asked has had the whole answer
    const end = () => setTimeout(() => setTimeout(() => counting.underWay!--));
    try {
      const response = await fetched.apply(window, its);
      void response.clone().arrayBuffer().then(end, end);
      return response;
    } catch (fault) {
      end();
      throw fault;
    }
  };
}
