import { Link, useLocation } from 'wouter';
import type { MachineSheet } from '#core/contract/machine.ts';
import { day } from '#core/units/day.ts';
import { dayText, hoursFigure } from '#core/words/quantityText.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { panelWords } from '#renderer/words/machineWords.ts';

/** When the machine was stripped down, and the slips its farmer was given. */
export function VisitsPanel({ sheet }: { sheet: MachineSheet }) {
  const [, goTo] = useLocation();
  return (
    <div className="two-tables">
      <section>
        <h2 className="panel-head">{panelWords.visitsHead}</h2>
        {sheet.stripDowns.length === 0 ? (
          <p className="second">{panelWords.noVisits}</p>
        ) : (
          <table className="table">
            <thead>
              <tr>
                <th>{panelWords.day}</th>
                <th className="figures">{panelWords.machineHours}</th>
                <th className="after-figures">{panelWords.fitter}</th>
              </tr>
            </thead>
            <tbody>
              {sheet.stripDowns.map((visit) => (
                <tr key={visit.stripDownId}>
                  <td className="nw">{dayText(day(visit.takenOn))}</td>
                  <td className="figures">{visit.machineHours === null ? '' : hoursFigure(visit.machineHours)}</td>
                  <td className="after-figures">{visit.fitter}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        <Keys>
          <Key onPress={() => goTo(`/strip-down/${sheet.machineId}`)}>{panelWords.startStripDown}</Key>
        </Keys>
      </section>
      <section>
        <h2 className="panel-head">{panelWords.slipsHead}</h2>
        {sheet.slips.length === 0 ? (
          <p className="second">{panelWords.noSlips}</p>
        ) : (
          <table className="table">
            <thead>
              <tr>
                <th>{panelWords.number}</th>
                <th>{panelWords.day}</th>
              </tr>
            </thead>
            <tbody>
              {sheet.slips.map((slip) => (
                <tr key={slip.slipId}>
                  <td>
                    <Link href={`/slips/${slip.slipId}`}>{slip.number}</Link>
                  </td>
                  <td className="nw">{dayText(day(slip.madeOn))}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        <Keys>
          <Key onPress={() => goTo(`/slip/${sheet.machineId}`)}>{panelWords.makeSlip}</Key>
        </Keys>
      </section>
    </div>
  );
}
