import { useSyncExternalStore } from 'react';
import { keepOverReload, leftOverReload } from './overReload.ts';

/**
 * What somebody had typed on a screen that broke or was loaded anew: read off the page in the moment the screen goes, kept
 * outside of it, and put back into the boxes of the same name once it stands again. No form knows of it.
 */
export type TypedText = {
  /** the box as it is named on the screen; of an option the question it answers */
  label: string;
  text: string;
  /** of several boxes of one name: which, from the top */
  nth: number;
};

type Box = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;
/** A box somebody typed into, with what stands in it. */
export type TypedBox = TypedText & { box: Box };

const typedInto = new WeakSet<Element>();
/** By record and screen: what was typed in one record is not offered in another, and waits for its own. */
const keptAt = new Map<string, readonly TypedText[]>();
let recordNow = '';
const ofScreen = (at: string): string => `${recordNow}\n${at}`;
const keptOf = (at: string): readonly TypedText[] => keptAt.get(ofScreen(at)) ?? NONE;
const NONE: readonly TypedText[] = [];
const heard = new Set<() => void>();

/** Marks the boxes that are typed into, so that what a form filled in by itself is not taken for somebody's words. */
export function listenForTyping(page: Document): () => void {
  const hear = (event: Event) => event.target instanceof Element && typedInto.add(event.target);
  page.addEventListener('input', hear, true);
  return () => page.removeEventListener('input', hear, true);
}

/** All that stands typed on the page now, and the options picked beside it. */
export function typedBoxes(): TypedBox[] {
  const all = named(document);
  const typed = all.filter(({ box, text }) => !isOption(box) && typedInto.has(box) && text.trim() !== '');
  const forms = new Set(typed.map(({ box }) => formOf(box)));
  return all.filter((one) => typed.includes(one) || (isPicked(one.box) && forms.has(formOf(one.box))));
}

/** Keeps what stood in boxes that are gone since. */
export function keepTyped(at: string, boxes: readonly TypedBox[]): void {
  const gone = boxes.filter(({ box }) => !box.isConnected);
  if (gone.length > 0) put(at, withNewer(at, gone));
}

type OverReload = [ofScreen: string, typed: readonly TypedText[]][];
const OVER_RELOAD = 'typed';

/** Keeps what stands typed at `at`, in this record, over a reload of the window, and takes up what was kept so. */
export function keepTypedOverReload(record: string, at: string): () => void {
  recordNow = record;
  for (const [there, typed] of leftOverReload<OverReload>(OVER_RELOAD) ?? []) keptAt.set(there, typed);
  tell();
  return keepOverReload(OVER_RELOAD, (): OverReload => {
    const kept = new Map(keptAt);
    kept.set(ofScreen(at), withNewer(at, typedBoxes()));
    return [...kept].filter(([, typed]) => typed.length > 0);
  });
}

/** What is kept of a screen, with what boxes hold now; of a box kept before, the newer words. */
function withNewer(at: string, boxes: readonly TypedBox[]): readonly TypedText[] {
  const newer = boxes.map(({ label, text, nth }) => ({ label, text, nth }));
  const older = keptOf(at).filter((old) => !newer.some((now) => isSameBox(now, old)));
  return [...older, ...newer];
}

/** Lets go of what its box holds already: it was saved, or its form keeps it by itself. */
export function letStandingGo(at: string): void {
  const kept = keptOf(at);
  const stand = named(document);
  const holds = (typed: TypedText) =>
    stand.some(
      (one) => isSameBox(one, typed) && isSameOption(one, typed) && one.text === typed.text && !isUnpicked(one.box),
    );
  const other = kept.filter((typed) => !holds(typed));
  if (other.length < kept.length) put(at, other);
}

/**
 * Types what is kept into the boxes that stand now, one after another: an answer may bring further boxes.
 * What finds no box stays kept.
 */
export async function putTypedBack(at: string): Promise<void> {
  for (const typed of keptOf(at)) {
    const found = named(document).find((stands) => isSameBox(stands, typed) && isSameOption(stands, typed));
    if (!found) continue;
    typeInto(found.box, typed.text);
    letTypedGo(at, typed);
    await new Promise(requestAnimationFrame);
  }
}

/** Of one box, or of all that is kept of a screen. */
export const letTypedGo = (at: string, one?: TypedText): void =>
  put(at, one ? keptOf(at).filter((typed) => typed !== one) : NONE);

export const useTypedText = (at: string): readonly TypedText[] =>
  useSyncExternalStore(
    (hear) => {
      heard.add(hear);
      return () => heard.delete(hear);
    },
    () => keptOf(at),
  );

function put(at: string, typed: readonly TypedText[]): void {
  if (typed.length > 0) keptAt.set(ofScreen(at), typed);
  else keptAt.delete(ofScreen(at));
  tell();
}

function tell(): void {
  for (const hear of heard) hear();
}

const isSameBox = (one: TypedText, other: TypedText): boolean => one.label === other.label && one.nth === other.nth;

/** The options of one question share its name: only the one that was picked is meant. */
const isSameOption = ({ box, text }: TypedBox, typed: TypedText): boolean => !isOption(box) || text === typed.text;

const isOption = (box: Box): box is HTMLInputElement => box instanceof HTMLInputElement && box.type === 'radio';
const isTick = (box: Box): box is HTMLInputElement => box instanceof HTMLInputElement && box.type === 'checkbox';
const isUnpicked = (box: Box): boolean => isOption(box) && !box.checked;
const isPicked = (box: Box): boolean => isOption(box) && box.checked;
const formOf = (box: Box): Element | null => box.closest('form, section, main');

/** Every box on the page by its name; files, secrets and what only finds are not looked at. */
function named(page: Document): TypedBox[] {
  const boxes = [...page.querySelectorAll<Box>('input:not([type=file], [type=password]), textarea, select')].filter(
    (box) => box.closest('[data-finds]') === null,
  );
  const seen = new Map<string, number>();
  return boxes.map((box) => {
    const own = nameOf(box);
    const label = isOption(box) ? nameOf(box.closest('[role=radiogroup]')) : own;
    // options are told apart by their words, other boxes of one name by their place
    const nth = isOption(box) ? 0 : (seen.get(label) ?? 0);
    seen.set(label, nth + 1);
    return { box, label, nth, text: isOption(box) ? own : isTick(box) ? String(box.checked) : box.value };
  });
}

function nameOf(element: Element | null): string {
  if (!element) return '';
  const by = element.getAttribute('aria-labelledby');
  const said = element.getAttribute('aria-label') ?? (by && wordsOf(document.getElementById(by.split(' ')[0] ?? '')));
  return said || wordsOf('labels' in element ? ((element as HTMLInputElement).labels?.[0] ?? null) : null);
}

/** A label's words, without the letter printed on it. */
function wordsOf(label: Element | null): string {
  const copy = label?.cloneNode(true);
  if (!(copy instanceof Element)) return '';
  for (const mark of copy.querySelectorAll('[aria-hidden=true], input, select, textarea')) mark.remove();
  return (copy.textContent ?? '').replace(/\s+/g, ' ').trim();
}

/** As a hand does it: past React's own property, so that the form hears of it. */
function typeInto(box: Box, text: string): void {
  typedInto.add(box);
  if (isOption(box) || isTick(box)) {
    if (String(box.checked) !== (isTick(box) ? text : 'true')) box.click();
    return;
  }
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(box), 'value')?.set?.call(box, text);
  box.dispatchEvent(new Event(box instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }));
}
