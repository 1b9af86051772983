/** "Spinach, eggs and oats" on the list: a comma that was written parts what without it is one name. */
import { type Act, type Mention, emptyMention } from './intents.js';

const parts = (words: string, heard: string): string[] => {
  const tokens = words.split(' ');
  const escaped = tokens.map((token) => token.replace(/[^\p{L}\p{N}]/gu, '.'));
  const pauses = new RegExp(`\\b${escaped.join('(,?) +')}\\b`, 'iu').exec(heard)?.slice(1) ?? [];
  const found: string[] = [];
  for (const [at, token] of tokens.entries()) {
    const joined = at > 0 && pauses[at - 1] !== ',';
    if (joined) found[found.length - 1] += ` ${token}`;
    else found.push(token);
  }
  return found;
};

/** Lines of the list are names and no more; elsewhere a comma may part a name from what is said of it. */
export const partedByCommas = (act: Act, heard: string): Act => {
  const { item, items, ...rest } = act.slots;
  const mentions = items ?? (item ? [item] : []);
  if (!act.intent.startsWith('buy-')) return act;
  const all = mentions.flatMap((mention): Mention[] => {
    const names = mention.words === null ? [] : parts(mention.words, heard);
    return names.length > 1 ? names.map((words) => ({ ...emptyMention, words })) : [mention];
  });
  return all.length > mentions.length ? { ...act, slots: { ...rest, items: all } } : act;
};
