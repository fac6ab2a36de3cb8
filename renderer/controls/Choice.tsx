import { Label, Radio, RadioGroup } from 'react-aria-components';
import { useAccelerator } from './useAccelerator.ts';

export type ChoiceProps<T extends string> = {
  /** said to screen readers; shown above when `labelled` */
  label: string;
  labelled?: boolean;
  options: readonly { value: T; text: string; letter?: string }[];
  value: T;
  onChange: (value: T) => void;
  disabled?: boolean;
};

/** One of a few, all in sight: the chosen one filled. More than six go into a PickBox. */
export function Choice<T extends string>({
  label,
  labelled = true,
  options,
  value,
  onChange,
  disabled = false,
}: ChoiceProps<T>) {
  return (
    <RadioGroup
      className="choice"
      value={value}
      onChange={(chosen) => onChange(chosen as T)}
      orientation="horizontal"
      isDisabled={disabled}
      {...(labelled ? {} : { 'aria-label': label })}
    >
      {labelled && <Label>{label}</Label>}
      <div className="choice-row">
        {options.map((option) => (
          <Radio key={option.value} value={option.value} className="choice-option">
            {option.text}
            {option.letter && <OptionLetter letter={option.letter} press={() => onChange(option.value)} />}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

function OptionLetter({ letter, press }: { letter: string; press: () => void }) {
  useAccelerator(letter, press);
  return (
    <span className="letter" aria-hidden="true">
      {letter}
    </span>
  );
}
