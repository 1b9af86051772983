/** Plays talk items in process: a household of its own for each, one store for all. */
import { readFileSync } from 'node:fs';
import { kitchenFromFile } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import { wallTime } from '../../src/safety/index.js';
import { openSqliteStore } from '../../src/store/index.js';
import type { Clock } from '../../src/terms/dates.js';
import { createHouseholds, createTongues } from '../../src/turn/index.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import type { TalkItem } from './talk-items.js';
import { asks, lacks, otherThanRight, type Heard, type Verdict } from './talk-verdict.js';

export interface Played {
  readonly item: TalkItem;
  readonly verdict: Verdict;
  /** Each turn with what was answered: before, the one judged, and the "yes" if one was said. */
  readonly turns: readonly { readonly said: string; readonly reply: TurnReply }[];
  readonly lacking: readonly string[];
}

/** Who of the household that is: "bea" is Aunt Bea. */
const personId = (kitchen: Kitchen, speaker: string): string | null => {
  const name = speaker.toLowerCase();
  return (
    [...kitchen.people.values()].find(
      (person) => person.name.toLowerCase() === name || person.name.toLowerCase().endsWith(` ${name}`),
    )?.id ?? null
  );
};

const yesIn = (locale: string): string => (locale.startsWith('es') ? 'sí' : 'yes');

export interface Player {
  play(item: TalkItem): Promise<Played>;
  close(): Promise<void>;
}

/** @param kitchenFile A kitchen in the form of `shared/demo`. */
export const createPlayer = async (kitchenFile: string): Promise<Player> => {
  const text = readFileSync(kitchenFile, 'utf8');
  const { timeZone } = kitchenFromFile(text, { now: new Date(0).toISOString(), timeZone: 'UTC' }).household;
  const store = openSqliteStore(':memory:');
  await store.migrate();
  let now = '';
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => {
      throw error;
    }),
    now: () => now,
  });

  const play = async (item: TalkItem): Promise<Played> => {
    const [day = '', time = ''] = item.at.split('T');
    now = wallTime(day, time, timeZone);
    const clock: Clock = { now, timeZone };
    const fresh = kitchenFromFile(text, clock);
    const householdId = `${fresh.household.id}.${item.id}`;
    await store.createHousehold({ ...fresh, household: { ...fresh.household, id: householdId } }, now);
    const speaker = { householdId, personId: personId(fresh, item.speaker), deviceId: null, owner: true };
    const turns: { said: string; reply: TurnReply }[] = [];
    const say = async (said: string): Promise<Heard> => {
      const { kitchen: before } = await households.look(householdId);
      const reply = await households.takeTurn(speaker, {
        id: `turn-${turns.length}`,
        conversation: 'talk',
        ...(item.locale === undefined ? {} : { locale: item.locale }),
        hypotheses: said === '' ? [] : [{ text: said }],
      });
      turns.push({ said, reply });
      const { kitchen: after } = await households.look(householdId);
      return { reply, before, after };
    };
    try {
      for (const said of item.before) await say(said);
      const heard = await say(item.say);
      const spoken = heard.reply.speech.text;
      const lacking = lacks(item.want, heard, spoken, clock);
      const done = (verdict: Verdict): Played => ({ item, verdict, turns, lacking });
      if (lacking.length === 0) return done('right');
      const other = otherThanRight(heard);
      if (other === 'question' && item.want.ask_ok) return done('question');
      if (!asks(heard.reply)) return done(other);
      const then = await say(yesIn(item.locale ?? fresh.household.locale));
      const whole = { ...then, before: heard.before };
      const after = lacks(item.want, whole, `${spoken} ${then.reply.speech.text}`, clock);
      return done(after.length === 0 ? 'asked' : other);
    } catch (error) {
      const lacking = [`thrown: ${error instanceof Error ? error.message : String(error)}`];
      return { item, verdict: 'wrong', turns, lacking };
    } finally {
      households.forget(householdId);
    }
  };
  return { play, close: () => store.close() };
};
