/** Fields and outcomes that several pages share. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { plainly } from './service.js';

export const Field = ({
  id,
  label,
  hint,
  children,
}: {
  id: string;
  label: string;
  hint?: string;
  children: ComponentChildren;
}) => (
  <div class="field">
    <label for={id}>{label}</label>
    {hint !== undefined && (
      <p class="hint" id={`${id}-hint`}>
        {hint}
      </p>
    )}
    {children}
  </div>
);

/** Does something and says beside it what came of it. */
export const useDoing = (): {
  readonly said: { readonly text: string; readonly isError: boolean } | null;
  readonly run: (work: () => Promise<unknown>, done: string) => Promise<boolean>;
} => {
  const [said, say] = useState<{ text: string; isError: boolean } | null>(null);
  return {
    said,
    run: async (work, done) => {
      try {
        await work();
        say({ text: done, isError: false });
        return true;
      } catch (error) {
        say({ text: plainly(error), isError: true });
        return false;
      }
    },
  };
};

export const SaidHere = ({ said }: { said: { text: string; isError: boolean } | null }) => (
  <p role={said?.isError === true ? 'alert' : 'status'} class={said?.isError === true ? 'notice' : 'outcome'}>
    {said?.text ?? ''}
  </p>
);
