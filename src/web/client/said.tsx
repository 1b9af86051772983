/** What was last said and answered, large and on screen always, with what can be done about it. */
import type { TurnReply } from '../../../shared/wire/turn.js';
import type { Talk } from './use-talk.js';

interface Saying {
  readonly label: string;
  readonly say: string;
}

const steps: readonly Saying[] = [
  { label: 'Next step', say: 'next' },
  { label: 'Repeat step', say: 'repeat' },
  { label: 'Step back', say: 'back' },
];
const yesNo: readonly Saying[] = [
  { label: 'Yes', say: 'yes' },
  { label: 'No', say: 'no' },
];

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What an open question can be answered with. */
const choicesOf = (reply: TurnReply | null): readonly Saying[] => {
  if (reply === null) return [];
  const { kind, choices } = reply.expects;
  if (choices.length > 0) return choices;
  return kind === 'step' ? steps : kind === 'yes-no' ? yesNo : [];
};

export const Said = ({
  talk,
  lang,
  undo,
}: {
  talk: Talk;
  lang: string;
  /** Takes back the last thing, wherever it is. */
  undo: () => void;
}) => {
  const { voice, lines, reply, partial, say, send } = talk;
  const asked = partial !== '' ? partial : lines.findLast(({ who }) => who === 'you')?.text;
  const answer = lines.findLast(({ who }) => who !== 'you');
  const choices = choicesOf(reply);
  return (
    <section class="said" aria-labelledby="said" lang={lang}>
      <h2 id="said" class="hidden" lang="en">
        Last answer
      </h2>
      {asked !== undefined && (
        <p class="asked">
          <span class="who" lang="en">
            {voice.doing.is === 'listening' ? 'Hearing: ' : 'You: '}
          </span>
          {asked}
        </p>
      )}
      <div class="answer" id="answer" tabIndex={0} role="group" aria-label="Answer">
        {voice.doing.is === 'awaiting' && asked !== undefined
          ? '…'
          : (answer?.text ?? 'Ask, or tell what you did.')}
      </div>
      {choices.length > 0 && (
        <ul class="choices" aria-label="You can say" lang={lang}>
          {choices.map((choice) => (
            <li key={choice.say}>
              <button type="button" class="choice" onClick={() => say(choice.say)}>
                {capital(choice.label)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <ul class="choices controls" aria-label="About the answer" lang="en">
        <li>
          <button
            type="button"
            disabled={voice.last.length === 0 && reply === null}
            onClick={() =>
              voice.last.length === 0 && reply !== null
                ? send({ on: 'answer', sentences: reply.speech.sentences })
                : send({ on: 'again' })
            }
          >
            Again
          </button>
        </li>
        <li>
          <button type="button" onClick={() => say('slower')}>
            Slower
          </button>
        </li>
        <li>
          <button type="button" onClick={() => send({ on: 'stop' })}>
            Stop
          </button>
        </li>
        <li>
          <button type="button" onClick={undo}>
            Undo
          </button>
        </li>
      </ul>
    </section>
  );
};
