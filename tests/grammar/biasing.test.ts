/** What is written out for recognisers hears what it should, and nothing of anybody else's kitchen. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SaxesParser } from 'saxes';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { biasingFor } from '../../src/biasing/index.js';
import { openGrammarFile, type OpenGrammar } from '../../src/grammar/tools.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import { bearer, say, startService, type Service } from '../support/service.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const kitchen = demoKitchen(clock);
const folder = mkdtempSync(join(tmpdir(), 'biasing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('SRGS in XML', () => {
  const xml = biasingFor(kitchen, 'srgs');
  let read: OpenGrammar;
  beforeAll(() => {
    writeFileSync(join(folder, 'kitchen.grxml'), xml);
    read = openGrammarFile(join(folder, 'kitchen.grxml'), { roots: [folder] });
  });
  const hears = (words: string): boolean => [...read.derivations(words.split(' '), {})].length > 0;

  it('is well formed, of its namespace, and refers to no rule that it lacks', () => {
    const ids = new Set<string>();
    const refs: string[] = [];
    let root = '';
    const parser = new SaxesParser({ xmlns: true });
    parser.on('error', (error) => {
      throw error;
    });
    parser.on('opentag', ({ local, uri, attributes }) => {
      expect(uri).toBe('http://www.w3.org/2001/06/grammar');
      if (local === 'grammar') root = attributes['root']!.value;
      if (local === 'rule') ids.add(attributes['id']!.value);
      if (local === 'ruleref' && attributes['uri']) refs.push(attributes['uri'].value);
    });
    parser.write(xml).close();
    expect(ids).toContain(root);
    for (const ref of refs) expect(ids).toContain(ref.replace('#', ''));
  });

  it.each([
    'where is the lentil stew',
    'take two portions of the jollof rice',
    'set a timer for ten minutes',
    'next step',
    'how old is my jollof rice',
  ])('hears: %s', (words) => expect(hears(words)).toBe(true));

  it('hears no other food, and no half sentence', () => {
    expect(hears('where is the quince paste')).toBe(false);
    expect(hears('where is')).toBe(false);
  });

  it('escapes what means something in XML', () => {
    const [item] = kitchen.items.values();
    const odd = { ...kitchen, items: new Map([[item!.id, { ...item!, name: 'salt & <vinegar>' }]]) };
    expect(biasingFor(odd, 'words')).toMatch(/^1\tsalt vinegar$/m);
    expect(biasingFor(odd, 'srgs')).not.toMatch(/<vinegar>/);
  });
});

describe('weighted words', () => {
  it('are names, each once, the one on most records first', () => {
    const lines = biasingFor(kitchen, 'words').trimEnd().split('\n');
    const parsed = lines.map((line) => /^(\d+)\t([\p{L}\p{N}' ]+)$/u.exec(line)?.slice(1) ?? []);
    for (const [index, [weight, phrase]] of parsed.entries()) {
      expect(phrase, lines[index]).toBeTruthy();
      expect(Number(weight)).toBeLessThanOrEqual(Number(parsed[index - 1]?.[0] ?? Infinity));
      expect(Number(weight)).toBeGreaterThan(0);
    }
    const phrases = parsed.map(([, phrase]) => phrase);
    expect(new Set(phrases).size).toBe(phrases.length);
    expect(phrases).toEqual(
      expect.arrayContaining(['lentil stew', 'glass bead', 'dele', 'second shelf of the fridge']),
    );
  });
});

describe('GET /v1/kitchen/biasing', () => {
  let service: Service;
  beforeAll(async () => {
    service = await startService();
  });
  afterAll(() => service.close());
  const get = (as: string, headers: Record<string, string> = {}) =>
    service.app.inject({
      url: `/v1/kitchen/biasing?as=${as}`,
      headers: { ...bearer(service.tokens.speak), ...headers },
    });

  it('gives each form with its type, and says when nothing changed', async () => {
    for (const [as, type, holds] of [
      ['words', 'text/tab-separated-values; charset=utf-8', /\tlentil stew\n/],
      ['jsgf', 'text/plain; charset=utf-8', /^#JSGF V1\.0 UTF-8;\ngrammar tellshelf;/],
      ['srgs', 'application/srgs+xml; charset=utf-8', /^<\?xml/],
    ] as const) {
      const first = await get(as);
      expect(first.headers['content-type']).toBe(type);
      expect(first.body).toMatch(holds);
      const etag = String(first.headers['etag']);
      expect((await get(as, { 'if-none-match': etag })).statusCode).toBe(304);
      await say(service, `put the ${as} paste on the second shelf of the fridge`);
      expect((await get(as, { 'if-none-match': etag })).body).toContain(`${as} paste`);
    }
    expect((await get('else')).statusCode).toBe(400);
  });
});
