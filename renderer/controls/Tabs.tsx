import { type KeyboardEvent, type ReactNode, type Ref, useId } from 'react';

export type TabsProps<Name extends string> = {
  /** what the tabs are of */
  label: string;
  tabs: readonly { name: Name; words: ReactNode }[];
  shown: Name;
  /** gone to along the tabs, by arrows, Home or End */
  onTurn: (to: Name) => void;
  /** pressed: it is to be read now */
  onPress: (name: Name) => void;
  ref: Ref<HTMLDivElement>;
  /** the panel shown */
  children: ReactNode;
};

/**
 * Panels behind tabs, one of them shown. One tab is reached by Tab, the others from it by arrows; the panel takes the focus too, since
 * a table is read before there is a key to press in it.
 * @source W3C, ARIA Authoring Practices Guide, "Tabs": roles, keys and focus, tabs that are shown as they are gone to
 */
export function Tabs<Name extends string>({ label, tabs, shown, onTurn, onPress, ref, children }: TabsProps<Name>) {
  const id = useId();
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const to = tabAt(
      event.key,
      tabs.findIndex(({ name }) => name === shown),
      tabs.length,
    );
    const tab = to === null ? undefined : tabs[to];
    if (!tab || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onTurn(tab.name);
    document.getElementById(`${id}-${tab.name}`)?.focus();
  };
  return (
    <div className="panels" ref={ref}>
      <div className="panel-tabs" role="tablist" aria-label={label} onKeyDown={onKeyDown}>
        {tabs.map(({ name, words }) => (
          <button
            key={name}
            id={`${id}-${name}`}
            type="button"
            role="tab"
            className="panel-tab"
            aria-selected={name === shown}
            {...(name === shown ? { 'aria-controls': `${id}-panel` } : { tabIndex: -1 })}
            onClick={() => onPress(name)}
          >
            {words}
          </button>
        ))}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a panel whose first thing is no key is gone to by Tab and scrolled by arrows */}
      <div className="panel" id={`${id}-panel`} role="tabpanel" aria-labelledby={`${id}-${shown}`} tabIndex={0}>
        {children}
      </div>
    </div>
  );
}

/** The tab a key leads to, round the ends; null: not a key of tabs. */
function tabAt(key: string, at: number, count: number): number | null {
  const to = { ArrowRight: at + 1, ArrowLeft: at - 1 + count, Home: 0, End: count - 1 }[key];
  return to === undefined ? null : to % count;
}
