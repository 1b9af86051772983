/** Ways in and out beside the API: a calendar, the list to buy, and turns from other speech fronts. */
import { z } from 'zod';
import { limits, speech, wireId } from './turn.js';

export const sideDoors = z
  .strictObject({
    calendar: z
      .url()
      .describe('Last days and reminders, iCalendar (RFC 5545), for calendars to subscribe to.'),
    listText: z.url().describe('The list to buy as plain text, a line each.'),
    listJson: z.url().describe('The list to buy as JSON.'),
    wall: z.url().describe('A page to show on a wall: last days, the list to buy, what will ring.'),
    turns: z
      .strictObject({
        url: z.url(),
        secret: z.string().describe('Signs what is posted there (Standard Webhooks). Keep it secret.'),
      })
      .describe('For another speech front: words in, SSML out.'),
  })
  .describe('Addresses of this device. Whoever has one may read it; they end when the device is sent away.')
  .meta({ id: 'SideDoors' });

export const hookTurn = z
  .strictObject({
    text: z.string().max(limits.utterance).describe('What was said, as words. Empty: nothing was heard.'),
    conversation: wireId
      .default('hook')
      .describe('Turns with the same name continue one conversation: one for each call or caller.'),
    locale: z.string().max(35).optional().describe('BCP 47. The household’s own when left out.'),
  })
  .meta({ id: 'HookTurn' });

export const hookReply = z
  .strictObject({
    speech,
    expects: z.boolean().describe('A question was asked: listen for the answer.'),
    goodbye: z.boolean().describe('The talk is over: hang up.'),
  })
  .meta({ id: 'HookReply' });
