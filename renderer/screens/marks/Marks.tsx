import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { Empty, FaultBox, Notice, Question } from '#renderer/controls/Notice.tsx';
import { Picture } from '#renderer/marks/Picture.tsx';
import { Figures } from '#renderer/words/Figures.tsx';
import { marksWords } from '#renderer/words/marksWords.ts';
import { SAMPLE, type SampleName, samples } from './samples.tsx';
import './marks-page.css';

/** Every mark there is, in light and dark side by side, drawn by the components the screens use. */
export default function Marks() {
  return (
    <main className="marks-page">
      <Half theme="light" />
      <Half theme="dark" />
    </main>
  );
}

function Half({ theme }: { theme: 'light' | 'dark' }) {
  return (
    <section className="marks-half" data-theme={theme}>
      <h1>
        {marksWords.title}, {marksWords[theme]}
      </h1>
      <ul className="marks-list">
        {(Object.keys(samples) as SampleName[]).map((name) => (
          <li key={name} data-mark={name}>
            <Picture width={SAMPLE.width} height={SAMPLE.height} label={marksWords.marks[name].join(': ')}>
              {samples[name]}
            </Picture>
            <div>
              <b>{marksWords.marks[name][0]}</b>
              <span>
                <Figures>{marksWords.marks[name][1]}</Figures>
              </span>
            </div>
          </li>
        ))}
      </ul>
      <Boxes />
      <div className="marks-colours">
        {Object.entries(marksWords.colours).map(([token, word]) => (
          <div key={token}>
            <i style={{ background: `var(--${token})` }} />
            {word}
          </div>
        ))}
      </div>
    </section>
  );
}

const nothing = () => {};

function Boxes() {
  const { empty, working, dial, fault } = marksWords;
  return (
    <div className="marks-boxes">
      <Empty head={empty.head} keys={<Key onPress={nothing}>{empty.key}</Key>}>
        {empty.text}
      </Empty>
      <Notice head={working.head}>
        <FillingRule words={working.text} share={0.62} />
      </Notice>
      <Question
        fact={<Figures>{dial.fact}</Figures>}
        then={dial.choices}
        keys={
          <Key onPress={nothing} letter="N">
            {dial.key}
          </Key>
        }
      />
      <FaultBox said={fault} />
    </div>
  );
}
