/** What was last said and answered, large and on screen always, with what can be done about it. */
import type { TurnReply } from '../../../shared/wire/turn.js';
import { t } from './language.js';
import type { Talk } from './use-talk.js';

interface Saying {
  readonly label: string;
  readonly say: string;
}

const steps = (): readonly Saying[] => [
  { label: t('talk-next-step'), say: t('say-next') },
  { label: t('talk-repeat-step'), say: t('say-repeat') },
  { label: t('talk-step-back'), say: t('say-back') },
];
const yesNo = (): readonly Saying[] => [
  { label: t('yes'), say: t('say-yes') },
  { label: t('no'), say: t('say-no') },
];

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What an open question can be answered with. */
const choicesOf = (reply: TurnReply | null): readonly Saying[] => {
  if (reply === null) return [];
  const { kind, choices } = reply.expects;
  if (choices.length > 0) return choices;
  return kind === 'step' ? steps() : kind === 'yes-no' ? yesNo() : [];
};

export const Said = ({
  talk,
  undo,
}: {
  talk: Talk;
  /** Takes back the last thing, wherever it is. */
  undo: () => void;
}) => {
  const { voice, lines, reply, partial, say, send } = talk;
  const asked = partial !== '' ? partial : lines.findLast(({ who }) => who === 'you')?.text;
  const answer = lines.findLast(({ who }) => who !== 'you');
  const choices = choicesOf(reply);
  return (
    <section class="said" aria-labelledby="said">
      <h2 id="said" class="hidden">
        {t('talk-last-answer')}
      </h2>
      {asked !== undefined && (
        <p class="asked">
          <span class="who">{t(voice.doing.is === 'listening' ? 'talk-hearing' : 'talk-you')}</span> {asked}
        </p>
      )}
      <div
        class="answer"
        id="answer"
        lang={answer?.lang}
        tabIndex={0}
        role="group"
        aria-label={t('talk-answer')}
      >
        {voice.doing.is === 'awaiting' && asked !== undefined
          ? '…'
          : (answer?.text ?? t('talk-nothing-said'))}
      </div>
      {choices.length > 0 && (
        <ul class="choices" aria-label={t('talk-can-say')}>
          {choices.map((choice) => (
            <li key={choice.say}>
              <button type="button" class="choice" onClick={() => say(choice.say)}>
                {capital(choice.label)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <ul class="choices controls" aria-label={t('talk-about-answer')}>
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
            {t('talk-again')}
          </button>
        </li>
        <li>
          <button type="button" onClick={() => say(t('say-slower'))}>
            {t('talk-slower')}
          </button>
        </li>
        <li>
          <button type="button" onClick={() => send({ on: 'stop' })}>
            {t('talk-stop')}
          </button>
        </li>
        <li>
          <button type="button" onClick={undo}>
            {t('undo')}
          </button>
        </li>
      </ul>
    </section>
  );
};
