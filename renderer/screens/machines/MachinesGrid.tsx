import { useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { MachinesOrder } from '#core/contract/machine.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { useFindFilter } from '#renderer/frame/findFilter.ts';
import { useLinesInSight } from '#renderer/useMachines.ts';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { Grid, GridRows } from './GridParts.tsx';
import { GroupHead } from './GroupHead.tsx';
import { LIST_HEAD_PX, ListHead } from './ListHead.tsx';
import { listItems, machinesOf } from './listItems.ts';
import { listLayout } from './listLayout.ts';
import { MachineRow, rowId, WaitingRow } from './MachineRow.tsx';
import { useListKeys } from './useListKeys.ts';
import { useWidth } from './useWidth.ts';

/** The machine last stood on: who comes back to the list finds it where it was. */
let lastStoodOn: number | null = null;
export const machineStoodOn = (): number | undefined => lastStoodOn ?? undefined;

/** Rows drawn above and below those in sight, so that a scroll finds them there. */
const BEYOND_SIGHT = 4;

/**
 * The list itself: the rule stays, rows scroll, only those in sight are asked for and drawn.
 * @param found the order is of what is typed now, and not of what was typed before
 */
export function MachinesGrid({ order, found }: { order: MachinesOrder; found: boolean }) {
  const [, goTo] = useLocation();
  const box = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(box);
  const [entered, setEntered] = useState(false);
  const filter = useFindFilter({ enter: () => setEntered(true), down: () => box.current?.focus() });
  const { groups, asOf } = order;
  const items = useMemo(() => listItems(groups), [groups]);
  const machineIds = useMemo(() => machinesOf(groups), [groups]);
  const [chosenId, setChosenId] = useState(lastStoodOn);
  const at = Math.max(0, machineIds.indexOf(chosenId ?? 0));
  // one scale for all, whatever is filtered: a bar stays where it is while the list narrows
  const layout = useMemo(() => listLayout(Math.max(560, widthPx), order.range), [widthPx, order.range]);
  // another function would have all rows placed anew
  const keyAt = useCallback((i: number) => keyOf(items[i]), [items]);

  const rows = useVirtualizer({
    count: items.length,
    getScrollElement: () => box.current,
    estimateSize: (i) => (items[i]?.kind === 'head' ? layout.headPx : layout.rowPx),
    getItemKey: keyAt,
    scrollMargin: LIST_HEAD_PX,
    scrollPaddingStart: LIST_HEAD_PX + layout.headPx,
    overscan: BEYOND_SIGHT,
  });
  useEffect(() => rows.measure(), [layout.kind, items]);
  const inSight = rows.getVirtualItems();
  const places = inSight.flatMap(({ index }) => {
    const item = items[index];
    return item?.kind === 'machine' ? item.at : [];
  });
  const lineOf = useLinesInSight(machineIds, { first: places[0] ?? 0, last: places.at(-1) ?? 0 }, order);

  const stand = (to: number) => {
    const machineId = machineIds[to];
    if (machineId === undefined) return;
    lastStoodOn = machineId;
    setChosenId(machineId);
    rows.scrollToIndex(items.findIndex((item) => item.kind === 'machine' && item.at === to));
  };
  const open = useCallback(
    (machineId: number | undefined) => {
      if (machineId === undefined) return;
      lastStoodOn = machineId;
      goTo(`/machine/${machineId}`);
    },
    [goTo],
  );
  // Enter opens what was found for all that was typed before it
  useEffect(() => {
    if (!entered || !found) return;
    setEntered(false);
    open(machineIds[at]);
  }, [entered, found]);
  useListKeys({
    count: machineIds.length,
    at,
    page: Math.max(1, Math.floor((box.current?.clientHeight ?? 0) / 60)),
    goTo: stand,
    open: (to) => open(machineIds[to]),
  });
  useEffect(() => {
    if (lastStoodOn !== null && at > 0) stand(at);
  }, []);

  const chosen = machineIds[at];
  return (
    <Grid
      ref={box}
      className="machines-list"
      aria-label={machinesWords.list}
      aria-rowcount={items.length + 1}
      aria-activedescendant={chosen !== undefined ? rowId(chosen) : undefined}
    >
      <ListHead layout={layout} />
      {machineIds.length === 0 && found && <NothingFound typed={filter.text} showAll={() => filter.setText('')} />}
      <GridRows className="machines-rows" style={{ height: rows.getTotalSize() }}>
        {inSight.map((row) => {
          const item = items[row.index];
          if (!item) return null;
          const place = { top: row.start - LIST_HEAD_PX, rowIndex: row.index + 2, layout };
          if (item.kind === 'head')
            return (
              <GroupHead key={row.key} group={item.group} count={item.count} after={order.winterAfter} {...place} />
            );
          const line = lineOf(item.machineId);
          const its = { machineId: item.machineId, chosen: item.at === at, onOpen: open, ...place };
          return line ? (
            <MachineRow key={row.key} line={line} asOf={asOf} {...its} />
          ) : (
            <WaitingRow key={row.key} {...its} />
          );
        })}
      </GridRows>
    </Grid>
  );
}

const keyOf = (item: ReturnType<typeof listItems>[number] | undefined): string =>
  item === undefined ? '' : item.kind === 'head' ? item.group : String(item.machineId);

const NothingFound = ({ typed, showAll }: { typed: string; showAll: () => void }) => (
  <div className="list-word">
    <Empty
      head={`${machinesWords.nothingFound}: ${typed.trim()}`}
      keys={<Key onPress={showAll}>{machinesWords.showAll}</Key>}
    >
      {machinesWords.nothingFoundNext}
    </Empty>
  </div>
);
