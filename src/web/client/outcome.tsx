/** What came of a press, where it was, with the way back. */
import { useEffect, useRef } from 'preact/hooks';
import { t } from './language.js';
import type { BoardState } from './use-board.js';

export const OutcomeHere = ({
  state,
  where,
  takesFocus = false,
}: {
  state: BoardState;
  where: string;
  /** The pressed button is gone: focus comes here rather than to the top of the page. */
  takesFocus?: boolean;
}) => {
  const { outcome } = state;
  const here = outcome?.where === where ? outcome : null;
  const line = useRef<HTMLDivElement>(null);
  const text = here?.text;
  useEffect(() => {
    if (takesFocus && text !== undefined) line.current?.focus();
  }, [takesFocus, text]);
  return (
    <div ref={line} tabIndex={-1} role={here?.isError === true ? 'alert' : 'status'} class="outcome">
      {here !== null && (
        <>
          <span class={here.isError ? 'warn' : ''}>{here.text}</span>{' '}
          {!here.isError && here.versions.length + here.kept.length > 0 && (
            <button type="button" onClick={() => void state.undo()}>
              {t('undo')}
            </button>
          )}
        </>
      )}
    </div>
  );
};
