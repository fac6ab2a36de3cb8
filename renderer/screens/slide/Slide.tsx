import { useState } from 'react';
import { useLocation } from 'wouter';
import type { ReplyOf } from '#core/contract/operation.ts';
import { rebuildsList, rebuildTakeSlide } from '#core/contract/rebuild.ts';
import {
  type SlideAsked,
  STRIP_CHOICE_NAMES,
  type StripChoiceName,
  type StripPlaceName,
  slideFacts,
  slideRead,
  slideSaveFacts,
} from '#core/contract/slide.ts';
import { sizeFigure, type Writing } from '#core/words/quantityText.ts';
import { Across } from '#renderer/controls/Across.tsx';
import { Choice } from '#renderer/controls/Choice.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { NumberField } from '#renderer/controls/NumberField.tsx';
import { planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { useToday, useWriting } from '#renderer/record.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { GoesBy } from '#renderer/screens/shop-figures/GoesBy.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { useIdInAddress } from '#renderer/useIdInAddress.ts';
import { shared } from '#renderer/words/english.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { cautionSaid, closedBecause, reasonText } from '#renderer/words/repairReasons.ts';
import { slideWords } from '#renderer/words/slideWords.ts';
import { SlideDrawing } from './SlideDrawing.tsx';
import './slide.css';

type Read = ReplyOf<typeof slideRead>;

const LEAVE_ALL: SlideAsked['choice'] = {
  ...{ 'top-front': 'leave', 'top-rear': 'leave', 'bottom-front': 'leave', 'bottom-rear': 'leave' },
};

/** A slide's strips, what can be done with each, and what that gives back at the hook. */
export default function Slide() {
  const assemblyId = useIdInAddress('assemblyId');
  const kept = useAsk(slideFacts, assemblyId === null ? null : { assemblyId });
  if (assemblyId && kept.value) return <WithFacts key={assemblyId} assemblyId={assemblyId} kept={kept.value} />;
  return <NotYetSheet title={slideWords.tab} of={kept} words={slideWords.loading} noSuch="unknown-assembly" />;
}

function WithFacts({ assemblyId, kept }: { assemblyId: number; kept: ReplyOf<typeof slideFacts> }) {
  const [, goTo] = useLocation();
  const writing = useWriting();
  const today = useToday();
  const [asked, setAsked] = useState<SlideAsked>(() => ({ assemblyId, ...kept.facts, choice: LEAVE_ALL }));
  const read = useAsk(slideRead, asked);
  // while another choice is worked out the last answer stays
  const [last, setLast] = useState<Read | null>(null);
  if (read.value && read.value !== last) setLast(read.value);
  const shown = read.value ?? last;
  if (!shown) return <NotYetSheet title={slideWords.tab} of={read} words={slideWords.loading} />;
  const set = (change: Partial<SlideAsked>) => setAsked({ ...asked, ...change });
  return (
    <Sheet
      title={slideWords.title(shown.assembly)}
      sub={slideWords.sub(shown.machine, shown.customer)}
      actions={
        <>
          <Key letter="M" onPress={() => goTo(`/machine/${shown.machineId}`)}>
            {slideWords.toMachine}
          </Key>
          <OnJob machineId={shown.machineId} asked={asked} />
        </>
      }
      block={[
        { label: shared.asOf, value: today },
        planningAidCell,
        {
          label: slideWords.block.lengths,
          value: kept.kept ? slideWords.block.kept : slideWords.block.notKept,
          grow: true,
        },
      ]}
    >
      {read.fault && <FaultBox fault={read.fault} />}
      <div className="slide">
        <div>
          <Play shown={shown} asked={asked} writing={writing} />
          <Strips
            shown={shown}
            choice={asked.choice}
            writing={writing}
            onChoose={(place, choice) => set({ choice: { ...asked.choice, [place]: choice } })}
          />
        </div>
        <div>
          <Lengths asked={asked} kept={kept} set={set} writing={writing} />
          <GoesBy names={['slidePlayMm', 'stripEvenWithinMm', 'overScrewHeadsMm']} />
        </div>
      </div>
    </Sheet>
  );
}

/** Puts what is chosen on the machine's open job; takes one in where there is none. */
function OnJob({ machineId, asked }: { machineId: number; asked: SlideAsked }) {
  const [, goTo] = useLocation();
  const jobs = useAsk(rebuildsList, {});
  const put = useDo(rebuildTakeSlide);
  const [by] = useBy();
  const job = jobs.value?.rebuilds.find((one) => one.machineId === machineId && one.handedOverOn === null);
  const chosen = Object.values(asked.choice).some((choice) => choice !== 'leave');
  if (!job)
    return (
      <Key letter="J" onPress={() => goTo(`/job/take-in/${machineId}`)}>
        {slideWords.takeJobIn}
      </Key>
    );
  const { rebuildId } = job;
  return (
    <>
      {put.fault && <FaultBox fault={put.fault} />}
      <Key
        first
        letter="J"
        disabled={!chosen || put.busy}
        onPress={async () => {
          if (await put.run({ rebuildId, assemblyId: asked.assemblyId, choice: asked.choice, by }))
            goTo(`/job/${rebuildId}`);
        }}
      >
        {slideWords.onJob(job.number)}
      </Key>
    </>
  );
}

function Play({ shown: { play, notMeasured }, asked, writing }: { shown: Read; asked: SlideAsked; writing: Writing }) {
  if (!play) return <p className="slide-need">{slideWords.needLengths}</p>;
  const done = (Object.entries(asked.choice) as [StripPlaceName, StripChoiceName][]).map(([place, choice]) => ({
    place,
    choice,
  }));
  return (
    <section className="slide-play">
      <p className="slide-says" role="status">
        <Figures>{slideWords.sentence(done, play.givesBack.hookMm, writing)}</Figures>
      </p>
      <SlideDrawing play={play} asked={asked} writing={writing} />
      <table className="table">
        <thead>
          <tr>
            <th scope="col">{slideWords.play}</th>
            <th scope="col">{slideWords.before}</th>
            <th scope="col">{slideWords.after}</th>
            <th scope="col">{slideWords.gives}</th>
          </tr>
        </thead>
        <tbody>
          {(['frontMm', 'rearMm', 'hookMm'] as const).map((row) => (
            <tr key={row}>
              <th scope="row">{slideWords.rows[row]}</th>
              <td>{slideWords.mm(play.before[row], writing)}</td>
              <td>{slideWords.mm(play.after[row], writing)}</td>
              <td>{slideWords.mm(play.givesBack[row], writing)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="second">
        {slideWords.endsWear} {notMeasured.length > 0 && slideWords.counted(notMeasured)}
      </p>
    </section>
  );
}

function Strips({
  shown,
  choice,
  writing,
  onChoose,
}: {
  shown: Read;
  choice: SlideAsked['choice'];
  writing: Writing;
  onChoose: (place: StripPlaceName, choice: StripChoiceName) => void;
}) {
  const { columns } = slideWords;
  const size = (mm: number | null) => (mm === null ? slideWords.notMeasured : sizeFigure(mm, 0.1, writing));
  return (
    <section>
      <h2>
        {slideWords.strips}, {slideWords.unit}
      </h2>
      <Across>
        <table className="table strips wide-table">
          <thead>
            <tr>
              {[
                columns.strip,
                columns.newSize,
                columns.front,
                columns.middle,
                columns.rear,
                columns.done,
                columns.closed,
              ].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.strips.map((strip) => {
              const open = strip.options.filter(({ closed }) => closed.length === 0);
              const picked = strip.options.find((option) => option.choice === choice[strip.place]);
              return (
                <tr key={strip.place}>
                  <th scope="row">{`${strip.item} ${strip.position}`}</th>
                  <td>{size(strip.newMm)}</td>
                  <td>{size(strip.thicknessMm.front)}</td>
                  <td>{size(strip.thicknessMm.middle)}</td>
                  <td>{size(strip.thicknessMm.rear)}</td>
                  <td>
                    <Choice
                      label={strip.position}
                      labelled={false}
                      options={STRIP_CHOICE_NAMES.filter((name) => open.some((option) => option.choice === name)).map(
                        (value) => ({ value, text: slideWords.choice(value) }),
                      )}
                      value={choice[strip.place]}
                      onChange={(next) => onChoose(strip.place, next)}
                    />
                    {picked && picked.shimMm > 0 && picked.choice === 'shim' && slideWords.shim(picked.shimMm, writing)}
                    {picked?.cautions.map((caution) => (
                      <div key={caution.code}>{reasonText(cautionSaid, caution)}</div>
                    ))}
                  </td>
                  <td>
                    {strip.options
                      .filter(({ closed }) => closed.length > 0)
                      .map((option) => (
                        <div key={option.choice}>
                          <Figures>
                            {slideWords.closed(
                              option.choice,
                              option.closed.map((reason) => reasonText(closedBecause, reason)).join(' '),
                            )}
                          </Figures>
                        </div>
                      ))}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Across>
    </section>
  );
}

function Lengths({
  asked,
  kept,
  set,
  writing,
}: {
  asked: SlideAsked;
  kept: ReplyOf<typeof slideFacts>;
  set: (change: Partial<SlideAsked>) => void;
  writing: Writing;
}) {
  const field = (name: 'spanMm' | 'overhangMm' | 'headsBareAtMm') => (
    <NumberField
      label={slideWords[name]}
      unit="mm"
      writing={writing}
      value={asked[name]}
      onChange={(value) => set({ [name]: value !== null && value > 0 ? value : null })}
    />
  );
  const worn = (name: 'newPlayMm' | 'channelFrontMm' | 'channelRearMm') => (
    <NumberField
      label={slideWords[name]}
      unit="mm"
      writing={writing}
      value={asked[name]}
      onChange={(value) => value !== null && value <= 50 && set({ [name]: value })}
    />
  );
  const save = useDo(slideSaveFacts);
  const [by, setBy] = useBy();
  const { assemblyId, choice: _, ...facts } = asked;
  const unsaved = !kept.kept || JSON.stringify(facts) !== JSON.stringify({ ...facts, ...kept.facts });
  const alike = asked.endsAlike === null ? 'not-said' : asked.endsAlike ? 'yes' : 'no';
  return (
    <section className="slide-lengths">
      <h2>{slideWords.lengthsHead}</h2>
      <div className="fields">
        {field('spanMm')}
        {field('overhangMm')}
        {worn('newPlayMm')}
        {worn('channelFrontMm')}
        {worn('channelRearMm')}
        {field('headsBareAtMm')}
        <Choice
          label={slideWords.endsAlike}
          options={[
            { value: 'yes', text: slideWords.yes },
            { value: 'no', text: slideWords.no },
            { value: 'not-said', text: slideWords.notSaid },
          ]}
          value={alike}
          onChange={(value) => set({ endsAlike: value === 'not-said' ? null : value === 'yes' })}
        />
      </div>
      <div className="fields">
        <ByField label={slideWords.by} value={by} onChange={setBy} />
        <Keys>
          <Key disabled={!unsaved || save.busy} onPress={() => void save.run({ assemblyId, facts, by })}>
            {slideWords.keep}
          </Key>
        </Keys>
      </div>
      {save.fault && <FaultBox fault={save.fault} />}
      <p className="second">{!kept.kept ? slideWords.notKept : unsaved ? slideWords.changed : slideWords.kept}</p>
    </section>
  );
}
