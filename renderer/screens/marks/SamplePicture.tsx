import { useState } from 'react';
import { useParams } from 'wouter';
import { DoNotUseBanner, planningAidCell, Sheet } from '#renderer/controls/Sheet.tsx';
import { BarKey } from '#renderer/marks/BarKey.tsx';
import { MachinePicture } from '#renderer/screens/machine/MachinePicture.tsx';
import { marksWords } from '#renderer/words/marksWords.ts';
import { samplePictures } from './samplePictures.ts';

/** The picture at the centre on its own, with an invented machine: by name of what it strains. */
export default function SamplePicture() {
  const { sample = 'ordinary' } = useParams();
  const machine = samplePictures[sample] ?? samplePictures.ordinary;
  const [chosenId, setChosenId] = useState(3);
  if (!machine) return null;
  return (
    <div className="window" style={{ paddingTop: 8 }}>
      <Sheet
        title={marksWords.picture.title}
        sub={sample}
        bleed
        banner={<DoNotUseBanner>{marksWords.picture.banner}</DoNotUseBanner>}
        block={[planningAidCell, { label: marksWords.picture.barsRun, value: <BarKey />, grow: true }]}
      >
        <MachinePicture {...machine} chosenId={chosenId} onChoose={setChosenId} />
      </Sheet>
    </div>
  );
}
