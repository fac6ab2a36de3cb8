import { Fragment, useState } from 'react';
import { useLocation } from 'wouter';
import { type CustomerSheet, customersSheet, type Double } from '#core/contract/customer.ts';
import { wholeFigure } from '#core/words/quantityText.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, Notice } from '#renderer/controls/Notice.tsx';
import { NotYet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useListKeys } from '#renderer/screens/machines/useListKeys.ts';
import { useAsk } from '#renderer/useAsk.ts';
import { machinesCell, customersWords as words } from '#renderer/words/customersWords.ts';
import { findCustomers } from './findCustomers.ts';
import { OpenCustomer } from './OpenCustomer.tsx';
import './customers.css';

/** A customer opened under its row; `with`: to be compared with another, which may be the same one. */
type Opened = { customerId: number; with: number | null };

/** Customers: found, changed, merged, given their data, and erased on request. */
export default function Customers() {
  const [, goTo] = useLocation();
  const list = useAsk(customersSheet, {});
  const [typed, setTyped] = useState('');
  const [opened, setOpened] = useState<Opened | null>(null);
  const [stood, setAt] = useState(0);
  const all = list.value?.customers ?? [];
  const shown = findCustomers(all, typed);
  const at = Math.min(stood, shown.length - 1);
  const toggle = (customerId: number) =>
    setOpened(opened?.customerId === customerId ? null : { customerId, with: null });
  useListKeys({
    count: shown.length,
    at,
    page: 12,
    open: (to) => shown[to] && toggle(shown[to].customerId),
    goTo: (to) => {
      setAt(to);
      document.getElementById(rowId(to))?.scrollIntoView({ block: 'nearest' });
    },
  });
  const living = all.filter(({ erased }) => erased === null);
  const machines = new Set(all.flatMap(({ owned }) => owned.map(({ machineId }) => machineId))).size;
  return (
    <Sheet
      title={words.title}
      sub={all.length > 0 && words.count(living.length)}
      block={[
        { label: words.blockMachines, value: wholeFigure(machines) },
        { label: words.blockErased, value: wholeFigure(all.length - living.length) },
        { label: words.blockRule, value: words.blockRuleIs, grow: true },
      ]}
    >
      <NotYet of={list} words={words.loading} />
      {list.value && all.length === 0 && (
        <Empty
          head={words.none}
          keys={
            <Key first letter="N" onPress={() => goTo('/take-in')}>
              {words.takeIn}
            </Key>
          }
        >
          {words.noneNext}
        </Empty>
      )}
      {all.length > 0 && (
        <>
          <Doubles
            doubles={list.value?.doubles ?? []}
            customers={all}
            onCompare={({ oneId, otherId }) => {
              setTyped('');
              setOpened({ customerId: oneId, with: otherId });
            }}
          />
          <div className="customers-find" data-finds>
            <TextField label={words.find} value={typed} onChange={setTyped} />
          </div>
          {shown.length === 0 && <p className="second">{words.nothingFound(typed)}</p>}
          <table className="table customers-table">
            <caption className="said">{words.title}</caption>
            <thead>
              <tr>
                {[words.name, words.place, words.phone, words.machines].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
                <th scope="col" className="figures">
                  {words.slips}
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((customer, place) => (
                <Fragment key={customer.customerId}>
                  <CustomerRow
                    customer={customer}
                    id={rowId(place)}
                    stoodOn={place === at}
                    open={opened?.customerId === customer.customerId}
                    onOpen={() => {
                      setAt(place);
                      toggle(customer.customerId);
                    }}
                  />
                  {opened?.customerId === customer.customerId && (
                    <tr className="form-row">
                      <td colSpan={5}>
                        <OpenCustomer
                          key={opened.with}
                          customer={customer}
                          others={living.filter((one) => one !== customer)}
                          compareWith={opened.with}
                          onClose={() => setOpened(null)}
                          onMerged={(customerId) => setOpened({ customerId, with: null })}
                        />
                      </td>
                    </tr>
                  )}
                </Fragment>
              ))}
            </tbody>
          </table>
        </>
      )}
    </Sheet>
  );
}

const rowId = (at: number): string => `customer-row-${at}`;

type RowProps = { customer: CustomerSheet; id: string; stoodOn: boolean; open: boolean; onOpen: () => void };

function CustomerRow({ customer, id, stoodOn, open, onOpen }: RowProps) {
  const name = customer.erased ? words.erasedName : customer.name;
  return (
    <tr id={id} className={[stoodOn && 'stood-on', customer.erased && 'second'].filter(Boolean).join(' ') || undefined}>
      <td>
        <button type="button" className="row-key" aria-expanded={open} aria-label={words.open(name)} onClick={onOpen}>
          {name}
        </button>
      </td>
      <td>{customer.place}</td>
      <td className="nw">{customer.phone}</td>
      <td>{machinesCell(customer)}</td>
      <td className="figures">{customer.slips > 0 ? wholeFigure(customer.slips) : ''}</td>
    </tr>
  );
}

/** So many pairs are shown at once; the next come as these are settled. */
const MOST_PAIRS = 4;

function Doubles({
  doubles,
  customers,
  onCompare,
}: {
  doubles: readonly Double[];
  customers: readonly CustomerSheet[];
  onCompare: (double: Double) => void;
}) {
  if (doubles.length === 0) return null;
  const nameOf = (id: number) => {
    const customer = customers.find(({ customerId }) => customerId === id);
    return words.merged(customer?.name ?? '', customer?.place ?? '');
  };
  return (
    <Notice kind="waiting" head={words.doublesHead(doubles.length)}>
      <ul className="doubles">
        {doubles.slice(0, MOST_PAIRS).map((double) => {
          const [one, other] = [nameOf(double.oneId), nameOf(double.otherId)];
          return (
            <li key={`${double.oneId} ${double.otherId}`}>
              <b>{words.doubleOf(one, other)}</b> <span className="second">{words.alike(double.alike)}</span>{' '}
              <button
                type="button"
                className="text-key"
                aria-label={words.compareLabel(one, other)}
                onClick={() => onCompare(double)}
              >
                {words.compare}
              </button>
            </li>
          );
        })}
      </ul>
    </Notice>
  );
}
