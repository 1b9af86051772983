/**
 * Tells at once what another did to the very thing a listener is in the middle of, as an unasked `note`.
 * It is told on the socket the talk is held on; a socket that breaks before it was acknowledged leaves it
 * to the next turn, which tells it instead. Works across servers: `news.ts` hears of every change.
 */
import type { FastifyBaseLogger } from 'fastify';
import type { Id, JournalEntry } from '../../kitchen/model.js';
import type { Context } from '../context.js';
import { send, type AsOpen, type Open } from './hub.js';

const PREFIX = 'news.';

export interface Interrupting {
  /** To those of the household who may be spoken to. */
  tell(opens: readonly Open[], entries: readonly JournalEntry[]): void;
  /** Null when the id is of something else. */
  acknowledged(open: Open, id: Id): Promise<void> | null;
}

export const createInterrupting = (
  { households }: Context,
  as: AsOpen,
  log: FastifyBaseLogger,
  count: () => void,
): Interrupting => {
  const tellOne = async (open: Open, entries: readonly JournalEntry[]): Promise<void> => {
    for (const [conversation, told] of [...open.talks].toReversed()) {
      const news = await as(open, (speaker) => households.interruption(speaker, conversation, entries));
      if (!news) continue;
      const id = PREFIX + news.entryId;
      // A turn that was taken meanwhile has told it, or had it before it.
      if (open.underWay > 0 || open.talks.get(conversation) !== told || open.unacknowledged.has(id)) return;
      told.add(news.entryId);
      open.unacknowledged.add(id);
      const due = entries.find((entry) => entry.id === news.entryId)!.at;
      const { speech } = news;
      send(open, {
        type: 'unasked',
        id,
        kind: 'note',
        due,
        speech: { ...speech, sentences: [...speech.sentences] },
      });
      // Heard twice by one listener is once too often, in however many conversations it matters.
      return;
    }
  };

  return {
    tell(opens, entries) {
      for (const open of opens) {
        // A turn under way tells it itself, or the next one does.
        if (open.talks.size === 0 || open.underWay > 0) continue;
        tellOne(open, entries).catch((error: unknown) =>
          log.error({ err: error }, 'could not tell what another did'),
        );
      }
    },
    acknowledged(open, id) {
      if (!id.startsWith(PREFIX)) return null;
      const entryId = id.slice(PREFIX.length);
      const talk = [...open.talks].find(([, told]) => told.has(entryId));
      if (!open.unacknowledged.delete(id)) return Promise.resolve();
      count();
      return talk ? as(open, (speaker) => households.told(speaker, talk[0], entryId)) : Promise.resolve();
    },
  };
};
