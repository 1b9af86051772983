import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { turnReply } from '../../shared/wire/turn.js';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

const post = (payload: unknown, headers: Record<string, string> = bearer(service.tokens.speak)) =>
  service.app.inject({
    method: 'POST',
    url: '/v1/turns',
    headers: { 'content-type': 'application/json', ...headers },
    payload: typeof payload === 'string' ? payload : JSON.stringify(payload),
  });

describe('POST /v1/turns', () => {
  it('answers in the shape it promises', async () => {
    const reply = await say(service, 'what should I use first');
    expect(turnReply.parse(reply)).toEqual(reply);
    expect(reply.understood.intents).toEqual(['use-first']);
    expect(reply.speech.ssml).toMatch(/^<\?xml|^<speak/);
    expect(reply.speech.text).toBe(reply.speech.sentences.join(' '));
  });

  it('puts food away and finds it again', async () => {
    const put = await say(service, 'put the barley soup on the top shelf of the fridge');
    expect(put.changes.map((change) => change.verb)).toEqual(['put away']);
    const found = await say(service, 'where is the barley soup');
    expect(found.speech.text).toMatch(/(top|first) shelf/i);
    expect(found.changes).toEqual([]);
  });

  it('asks for one thing at a time and understands the bare answer', async () => {
    const asked = await say(service, 'put the pickled beets away');
    expect(asked.changes).toEqual([]);
    expect(asked.expects.kind).not.toBe('open');
    const done = await say(service, 'the second shelf of the fridge');
    expect(done.changes[0]?.verb).toBe('put away');
  });

  it('hears nothing, and says so', async () => {
    const response = await post({ id: 'silence', hypotheses: [] });
    expect(response.json()).toMatchObject({ understood: { verdict: 'nothing-heard' }, changes: [] });
    expect(response.json().speech.text.length).toBeGreaterThan(0);
  });

  it('needs a token, and one that is ours', async () => {
    for (const headers of [
      {},
      bearer('tsf_wrong'),
      bearer(`tsf_${'a'.repeat(43)}`),
      { authorization: 'Basic eA==' },
    ]) {
      const response = await post({ id: 'x', hypotheses: [] }, headers);
      expect(response.statusCode).toBe(401);
      expect(response.headers['content-type']).toMatch('application/problem+json');
      expect(response.headers['www-authenticate']).toMatch(/^Bearer/);
      expect(response.json()).toMatchObject({ code: 'not-identified', status: 401 });
    }
  });

  it('gives each request an id, and takes a harmless one from the caller', async () => {
    const own = await post(
      { id: 'y1', hypotheses: [] },
      { ...bearer(service.tokens.speak), 'x-request-id': 'abc-1' },
    );
    expect(own.headers['x-request-id']).toBe('abc-1');
    const hostile = await post(
      { id: 'y2', hypotheses: [] },
      { ...bearer(service.tokens.speak), 'x-request-id': 'a b"}' },
    );
    expect(hostile.headers['x-request-id']).toMatch(/^r/);
  });

  it('logs what kind of turn it was, and no word of it', async () => {
    await say(service, 'where is the heliotrope marmalade');
    const turns = service.logged.filter((line) => line['msg'] === 'turn');
    expect(turns.length).toBeGreaterThan(0);
    expect(JSON.stringify(service.logged)).not.toMatch(/heliotrope|marmalade/i);
  });
});

describe('when asked to log speech', () => {
  it('logs what was heard and said', async () => {
    const talkative = await startService({ LOG_SPEECH: 'true' });
    await say(talkative, 'where is the heliotrope marmalade');
    expect(JSON.stringify(talkative.logged)).toMatch(/heliotrope/);
    await talkative.close();
  });
});
