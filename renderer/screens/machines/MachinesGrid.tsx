import { useVirtualizer } from '@tanstack/react-virtual';
import { useEffect, useMemo, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { MachineLine } from '#core/contract/machine.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty } from '#renderer/controls/Notice.tsx';
import { useFindFilter } from '#renderer/frame/findFilter.ts';
import { machinesWords } from '#renderer/words/machinesWords.ts';
import { Grid, GridRows } from './GridParts.tsx';
import { GroupHead } from './GroupHead.tsx';
import { LIST_HEAD_PX, ListHead } from './ListHead.tsx';
import { filterMachines, listItems, machinesOf, winterAfter } from './listItems.ts';
import { listLayout } from './listLayout.ts';
import { listRange } from './listRange.ts';
import { MachineRow } from './MachineRow.tsx';
import { useListKeys } from './useListKeys.ts';
import { useWidth } from './useWidth.ts';

/** The machine last stood on: who comes back to the list finds it where it was. */
let lastStoodOn: number | null = null;
export const machineStoodOn = (): number | undefined => lastStoodOn ?? undefined;

/** The list itself: the rule stays, rows scroll, only those in sight are drawn. */
export function MachinesGrid({ machines, asOf }: { machines: readonly MachineLine[]; asOf: string }) {
  const [, goTo] = useLocation();
  const box = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(box);
  const filter = useFindFilter({ enter: () => open(at), down: () => box.current?.focus() });
  const items = useMemo(() => listItems(filterMachines(machines, filter.text)), [machines, filter.text]);
  const lines = useMemo(() => machinesOf(items), [items]);
  const [chosenId, setChosenId] = useState(lastStoodOn);
  const at = Math.max(
    0,
    lines.findIndex((line) => line.machineId === chosenId),
  );
  // one scale for all, whatever is filtered: a bar stays where it is while the list narrows
  const range = useMemo(() => listRange(machines), [machines]);
  const layout = listLayout(Math.max(560, widthPx), range);

  const rows = useVirtualizer({
    count: items.length,
    getScrollElement: () => box.current,
    estimateSize: (i) => (items[i]?.kind === 'head' ? layout.headPx : layout.rowPx),
    getItemKey: (i) => keyOf(items[i]),
    scrollMargin: LIST_HEAD_PX,
    scrollPaddingStart: LIST_HEAD_PX + layout.headPx,
    overscan: 8,
  });
  useEffect(() => rows.measure(), [layout.kind, items]);

  const stand = (to: number) => {
    const line = lines[to];
    if (!line) return;
    lastStoodOn = line.machineId;
    setChosenId(line.machineId);
    rows.scrollToIndex(items.findIndex((item) => item.kind === 'machine' && item.at === to));
  };
  const open = (to: number) => {
    const line = lines[to];
    if (!line) return;
    lastStoodOn = line.machineId;
    goTo(`/machine/${line.machineId}`);
  };
  useListKeys({
    count: lines.length,
    at,
    page: Math.max(1, Math.floor((box.current?.clientHeight ?? 0) / 60)),
    goTo: stand,
    open,
  });
  useEffect(() => {
    if (lastStoodOn !== null && at > 0) stand(at);
  }, []);

  const chosen = lines[at];
  return (
    <Grid
      ref={box}
      className="machines-list"
      aria-label={machinesWords.list}
      aria-rowcount={items.length + 1}
      aria-activedescendant={chosen ? rowId(chosen.machineId) : undefined}
    >
      <ListHead layout={layout} />
      {lines.length === 0 && <NothingFound typed={filter.text} showAll={() => filter.setText('')} />}
      <GridRows className="machines-rows" style={{ height: rows.getTotalSize() }}>
        {rows.getVirtualItems().map((row) => {
          const item = items[row.index];
          if (!item) return null;
          const place = { top: row.start - LIST_HEAD_PX, rowIndex: row.index + 2, layout };
          return item.kind === 'head' ? (
            <GroupHead key={row.key} group={item.group} count={item.count} after={winterAfter(machines)} {...place} />
          ) : (
            <MachineRow
              key={row.key}
              id={rowId(item.line.machineId)}
              line={item.line}
              asOf={asOf}
              chosen={item.at === at}
              onOpen={() => open(item.at)}
              {...place}
            />
          );
        })}
      </GridRows>
    </Grid>
  );
}

const rowId = (machineId: number): string => `machine-${machineId}`;

const keyOf = (item: ReturnType<typeof listItems>[number] | undefined): string =>
  item === undefined ? '' : item.kind === 'head' ? item.group : String(item.line.machineId);

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
