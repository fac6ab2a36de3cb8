import type { CustomerSheet } from '#core/contract/customer.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { customersWords as words } from '#renderer/words/customersWords.ts';

export type Details = Pick<CustomerSheet, 'name' | 'place' | 'address' | 'phone' | 'email'>;
export const detailsOf = ({ name, place, address, phone, email }: Details): Details => ({
  ...{ name, place, address, phone, email },
});

const FIELDS = [
  ['name', 120],
  ['place', 200],
  ['phone', 60],
  ['email', 200],
  ['address', 500],
] as const;

/** What a customer is called and how they are reached; beside each box what another row has there, to be taken. */
export function DetailFields({
  details,
  onChange,
  other = null,
}: {
  details: Details;
  onChange: (details: Details) => void;
  other?: Details | null;
}) {
  return (
    <div className="fields customer-fields">
      {FIELDS.map(([field, maxLength], place) => {
        const theirs = other?.[field] ?? '';
        return (
          <div key={field}>
            <TextField
              label={words[field]}
              value={details[field]}
              onChange={(text) => onChange({ ...details, [field]: text })}
              maxLength={maxLength}
              lines={field === 'address' ? 2 : 1}
              autoFocus={place === 0 && other === null}
            />
            {theirs !== '' && theirs !== details[field] && (
              <button type="button" className="text-key" onClick={() => onChange({ ...details, [field]: theirs })}>
                {words.take(theirs)}
              </button>
            )}
          </div>
        );
      })}
    </div>
  );
}
