/**
 * W3C Speech Synthesis Markup Language 1.1 (Recommendation, 7 September 2010).
 * Numbers, days and times are words already, so no `say-as` is needed: engines differ in it.
 */
import type { Listener } from './answer.js';
import { clean } from './marks.js';

/** A short sound in place of words. Played if it can be; else its `text` is said, which may be empty. */
export interface Earcon {
  readonly src: string;
  /** What the sound is, for readers of the markup (`<desc>`). */
  readonly desc: string;
  readonly text: string;
}

export interface SsmlSentence {
  readonly text: string;
  /** A pause after it, as between groups of a list. */
  readonly pause?: boolean;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
};

/** Text or an attribute's value, safe in XML 1.0: escaped, and without characters it forbids. */
export const escapeXml = (text: string): string =>
  clean(text).replace(/[&<>"']/g, (char) => ENTITIES[char] ?? '');

/** A pace as SSML 1.1 has it: a percentage of the voice's own rate. Kept within 50 % and 300 %. */
export const rateAttribute = (rate: number): string => {
  const kept = Number.isFinite(rate) ? Math.min(3, Math.max(0.5, rate)) : 1;
  return `${Math.round(kept * 100)}%`;
};

/** A whole `<speak>` document with a mark `s1`, `s2`, … before each sentence. */
export const ssmlDocument = (
  sentences: readonly SsmlSentence[],
  listener: Listener,
  locale: string,
  earcon?: Earcon,
): string => {
  const volume =
    listener.whisper && !['silent', 'x-soft'].includes(listener.volume) ? 'soft' : listener.volume;
  const prosody = `<prosody rate="${rateAttribute(listener.rate)}"${volume === 'medium' ? '' : ` volume="${volume}"`}>`;
  const sound =
    earcon === undefined
      ? ''
      : `<audio src="${escapeXml(earcon.src)}"><desc>${escapeXml(earcon.desc)}</desc>${escapeXml(earcon.text)}</audio>`;
  const body = sentences
    .map(
      ({ text, pause }, i) =>
        `<mark name="s${i + 1}"/><s>${escapeXml(text)}</s>${pause ? '<break strength="medium"/>' : ''}`,
    )
    .join('');
  const paragraph = sound === '' && body === '' ? '' : `<p>${sound}${body}</p>`;
  return (
    `<speak version="1.1" xmlns="http://www.w3.org/2001/10/synthesis" xml:lang="${escapeXml(locale)}">` +
    `${prosody}${paragraph}</prosody></speak>`
  );
};
