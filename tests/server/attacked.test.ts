/** Requests and sentences that once stood the service still or ended it: each is answered, and it goes on. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bearer, say, startService, type Service } from '../support/service.js';

let service: Service;
beforeAll(async () => {
  service = await startService();
});
afterAll(() => service.close());

describe('one label that is too small', () => {
  it.each([
    ['pdf', [30, 20]],
    ['pdf', [30, 30]],
    ['pdf', [30, 100]],
    ['pdf', [35, 20]],
  ])(
    '%s of %j millimetres is refused in words to any device, and the service goes on',
    async (kind, size) => {
      const [item] = service.kitchen.items.keys();
      const before = process.memoryUsage().rss;
      const refused = await service.app.inject({
        method: 'POST',
        url: '/v1/labels',
        headers: bearer(service.tokens.speak),
        payload: { kind, size, items: [item] },
      });
      expect(refused.statusCode).toBeGreaterThanOrEqual(400);
      expect(refused.statusCode).toBeLessThan(500);
      expect(refused.body).toMatch(/too small/);
      // It took two and a half thousand million.
      expect(process.memoryUsage().rss - before).toBeLessThan(300e6);
      const turn = await say(service, 'where is the milk');
      expect(turn.speech.text).toContain('milk');
    },
  );
});

describe('a meal or a part of the day in a sentence', () => {
  it.each([
    'warm up the lentil stew for supper',
    'reheat the lentil stew for lunch',
    'how do I reheat the lentil stew for dinner',
    'warm the soup for dinner',
    'what about for tonight',
    'for dinner',
    'it was out all morning',
    'the chicken was on the counter all afternoon',
    'remind me to thaw the chicken thighs',
    'no, for dinner',
  ])('"%s" is answered', async (words) => {
    const reply = await say(service, words);
    expect(reply.speech.text).not.toMatch(/went wrong on my side/i);
    expect(reply.speech.text.length).toBeGreaterThan(0);
  });
});
