import { type ReactNode, type Ref, useId } from 'react';

type FieldFrameProps = {
  label: string;
  /** said under the box: what it is for, or the unit's meaning */
  hint?: string | undefined;
  /** what was expected, when what stands there could not be read */
  fault?: string | null | undefined;
  /** what was typed, as understood */
  echo?: string | null | undefined;
  unit?: string | undefined;
  children: (ids: { id: string; describedBy: string }) => ReactNode;
};

/** Label above, box, unit beside it, and one line below for the echo, the fault or the hint. */
export function FieldFrame({ label, hint, fault, echo, unit, children }: FieldFrameProps) {
  const id = useId();
  const below = fault ?? echo ?? hint;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="field-box">
        {children({ id, describedBy: `${id}-below` })}
        {unit && <span className="unit">{unit}</span>}
      </div>
      <div id={`${id}-below`} className={fault ? 'below fault' : 'below'} role={fault ? 'alert' : undefined}>
        {below}
      </div>
    </div>
  );
}

export type TextFieldProps = {
  label: string;
  value: string;
  onChange: (value: string) => void;
  hint?: string;
  fault?: string | null;
  /** lines; more than one is a larger box */
  lines?: number;
  /** earlier entries offered while typing */
  offered?: readonly string[];
  autoFocus?: boolean;
  maxLength?: number;
  ref?: Ref<HTMLInputElement>;
};

export function TextField({
  label,
  value,
  onChange,
  hint,
  fault,
  lines = 1,
  offered,
  autoFocus,
  maxLength,
  ref,
}: TextFieldProps) {
  return (
    <FieldFrame label={label} hint={hint} fault={fault}>
      {({ id, describedBy }) =>
        lines > 1 ? (
          <textarea
            id={id}
            rows={lines}
            value={value}
            maxLength={maxLength}
            aria-describedby={describedBy}
            onChange={(e) => onChange(e.target.value)}
          />
        ) : (
          <>
            <input
              ref={ref}
              id={id}
              value={value}
              maxLength={maxLength}
              // biome-ignore lint/a11y/noAutofocus: a form opened by a key starts in its first box
              autoFocus={autoFocus}
              autoComplete="off"
              list={offered && `${id}-offered`}
              aria-describedby={describedBy}
              aria-invalid={fault ? true : undefined}
              onChange={(e) => onChange(e.target.value)}
            />
            {offered && (
              <datalist id={`${id}-offered`}>
                {offered.map((entry) => (
                  <option key={entry} value={entry} />
                ))}
              </datalist>
            )}
          </>
        )
      }
    </FieldFrame>
  );
}
