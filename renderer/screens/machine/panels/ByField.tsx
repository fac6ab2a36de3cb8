import { useState } from 'react';
import { shopRead } from '#core/contract/shop.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { panelWords } from '#renderer/words/machineWords.ts';

/** Who last signed something in this window: one person mostly sits before it. */
let lastBy = '';

export function useBy(): [string, (by: string) => void] {
  const [by, setBy] = useState(lastBy);
  return [
    by,
    (now) => {
      lastBy = now;
      setBy(now);
    },
  ];
}

/** Who puts right, closes or makes something: the shop's fitters are offered, any name is taken. */
export function ByField({
  value,
  onChange,
  label = panelWords.whoBy,
}: {
  value: string;
  onChange: (by: string) => void;
  label?: string;
}) {
  const shop = useAsk(shopRead, {});
  const fitters = shop.value?.fitters.filter((fitter) => fitter.active).map((fitter) => fitter.name) ?? [];
  return <TextField label={label} value={value} onChange={onChange} offered={fitters} maxLength={120} />;
}
