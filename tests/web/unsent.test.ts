/** What is kept without a network: none lost, none sent twice, in order, and not past an open question. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TurnRefused } from '../../shared/client/conversation.js';
import { ServiceProblem, ServiceUnreachable } from '../../shared/client/http.js';
import type { TurnReply } from '../../shared/wire/turn.js';
import { sendKept, type Senders } from '../../src/web/client/sending.js';
import { nextOf, unsentOf, type UnsentEdit, type UnsentTurn } from '../../src/web/client/unsent.js';

const AT = '2026-05-14T23:00:00.000Z';
const clock = { now: () => AT, today: (at: string) => at.slice(0, 10) };
const turn = (id: string, more: Partial<UnsentTurn> = {}): UnsentTurn => ({
  kind: 'turn',
  id,
  at: AT,
  day: '2026-05-14',
  request: { id, conversation: 'page', hypotheses: [{ text: `words of ${id}` }] },
  isAnswer: false,
  refused: null,
  wanted: false,
  ...more,
});
const edit = (id: string, more: Partial<UnsentEdit> = {}): UnsentEdit => ({
  kind: 'edit',
  id,
  at: AT,
  day: '2026-05-14',
  edit: { method: 'POST', path: '/v1/kitchen/list', body: { name: id } },
  done: `${id} is on the list.`,
  about: [],
  refused: null,
  wanted: false,
  ...more,
});
const reply = (id: string, kind: TurnReply['expects']['kind'] = 'open'): TurnReply =>
  ({
    id,
    expects: { kind, choices: [] },
    speech: { text: id, sentences: [id], ssml: '' },
  }) as unknown as TurnReply;
const done = { version: 1, changes: [] };
const problem = (status: number, code: string) =>
  new ServiceProblem({ type: 'about:blank', title: 'No.', status, code });
const senders = (over: Partial<Senders> = {}): Senders => ({
  turn: (request) => Promise.resolve(reply(request.id)),
  edit: () => Promise.resolve(done),
  ...over,
});

describe('what becomes of one when the kitchen is reached', () => {
  it('is sent on the day it was said, and asked about on another', () => {
    expect(nextOf(turn('a'), AT, '2026-05-14')).toBe('send');
    expect(nextOf(turn('a'), AT, '2026-05-15')).toBe('ask');
    expect(nextOf(turn('a', { wanted: true }), AT, '2026-05-15')).toBe('send');
  });
  it('is asked about when it answered a question more than ten minutes ago', () => {
    const answer = turn('a', { isAnswer: true });
    expect(nextOf(answer, '2026-05-14T23:10:00.000Z', '2026-05-14')).toBe('send');
    expect(nextOf(answer, '2026-05-14T23:10:00.001Z', '2026-05-14')).toBe('ask');
  });
  it('sends a press on any day: it holds its own dates', () => {
    expect(nextOf(edit('a'), AT, '2026-06-01')).toBe('send');
    expect(nextOf(edit('a', { refused: 'no' }), AT, '2026-05-14')).toBe('refused');
  });
});

describe('sending', () => {
  it('keeps a refused one with its reason, and goes on with the rest', async () => {
    const list = unsentOf('refused');
    list.add(edit('gone'));
    list.add(edit('oats'));
    const sent = await sendKept(
      list,
      senders({
        edit: (one) =>
          (one.body as { name: string }).name === 'gone'
            ? Promise.reject(problem(409, 'refused'))
            : Promise.resolve(done),
      }),
      clock,
    );
    expect(sent).toMatchObject({ edits: 1, refused: [{ words: 'gone is on the list.', why: 'No.' }] });
    expect(list.all()).toMatchObject([{ id: 'gone', refused: 'No.' }]);
  });

  it.each([
    ['no network', new ServiceUnreachable('no')],
    ['a full service', problem(503, 'overloaded')],
    ['not known whether it was kept', problem(503, 'not-known')],
    ['a gateway', problem(502, 'unknown')],
    ['too many turns', new TurnRefused('too-many-waiting', 'Wait.')],
  ])('stops at %s and leaves everything as it was', async (_why, error) => {
    const list = unsentOf('later');
    for (const one of [turn('a'), edit('b')]) list.add(one);
    const sent = await sendKept(
      list,
      senders({ turn: () => Promise.reject(error), edit: () => Promise.reject(error) }),
      clock,
    );
    expect(sent).toEqual({ turns: [], edits: 0, refused: [], asked: [] });
    expect(list.all().map(({ id, refused }) => [id, refused])).toEqual([
      ['a', null],
      ['b', null],
    ]);
  });

  it('does not answer the kitchen’s question with what was said before it was asked', async () => {
    const list = unsentOf('question');
    for (const one of [turn('a'), turn('b'), edit('c')]) list.add(one);
    const ask = senders({ turn: ({ id }) => Promise.resolve(reply(id, 'choice')) });
    const first = await sendKept(list, ask, clock);
    expect(first.turns.map(({ id }) => id)).toEqual(['a']);
    expect(first.edits).toBe(1);
    expect(list.all().map(({ id }) => id)).toEqual(['b']);
    const still = await sendKept(list, ask, clock, { onItsWay: () => false, byQuestion: true });
    expect(still.turns).toEqual([]);
    const after = await sendKept(list, ask, clock, { onItsWay: () => false, byQuestion: false });
    expect(after.turns.map(({ id }) => id)).toEqual(['b']);
  });

  it('leaves alone what is on its way already', async () => {
    const list = unsentOf('way');
    list.add(turn('a'));
    const sent = await sendKept(list, senders(), clock, { onItsWay: (id) => id === 'a', byQuestion: false });
    expect(sent.turns).toEqual([]);
    expect(list.all()).toHaveLength(1);
  });

  it('whatever fails and whenever, everything is done once, in order, and nothing is lost', async () => {
    const fates = fc.array(fc.constantFrom('fine', 'lost before', 'lost after'), { maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.boolean(), { minLength: 1, maxLength: 8 }),
        fates,
        async (kinds, failing) => {
          const list = unsentOf('any');
          const ids = kinds.map((_, at) => `n${at}`);
          for (const [at, isTurn] of kinds.entries()) list.add(isTurn ? turn(`n${at}`) : edit(`n${at}`));
          const fate = failing.values();
          /** As the service does it: once for each id, in the order of first arrival. */
          const arrived: string[] = [];
          const take = <T>(id: string, answer: T): Promise<T> => {
            const now = fate.next().value ?? 'fine';
            if (now === 'lost before') return Promise.reject(new ServiceUnreachable('no'));
            if (!arrived.includes(id)) arrived.push(id);
            return now === 'lost after'
              ? Promise.reject(new ServiceUnreachable('no'))
              : Promise.resolve(answer);
          };
          const flaky: Senders = {
            turn: ({ id }) => take(id, reply(id)),
            edit: (_edit, id) => take(id, done),
          };
          for (let tries = 0; tries <= failing.length && list.all().length > 0; tries++) {
            await sendKept(list, flaky, clock);
            const left = list.all().map(({ id }) => id);
            expect(ids.every((id) => left.includes(id) || arrived.includes(id))).toBe(true);
          }
          expect(list.all()).toEqual([]);
          expect(arrived).toEqual(ids);
        },
      ),
    );
  });
});
