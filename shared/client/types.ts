/**
 * What goes over the wire, as a client sees it. Each is inferred from the schema that checks it; the package
 * carries them written out (`.client-types.mjs`), so that a client needs no library of ours.
 */
import type { z } from 'zod';
import type * as devices from '../wire/devices.js';
import type { person } from '../wire/home.js';
import type * as kitchen from '../wire/kitchen.js';
import type * as problems from '../wire/problem.js';
import type { reminderView } from '../wire/reminders.js';
import type { sideDoors } from '../wire/side-doors.js';
import type * as socket from '../wire/socket.js';
import type * as turns from '../wire/turn.js';

export type Item = z.infer<typeof kitchen.item>;
export type ItemChange = z.infer<typeof kitchen.itemChange>;
export type Place = z.infer<typeof kitchen.place>;
export type Marker = z.infer<typeof kitchen.marker>;
export type Person = z.infer<typeof person>;
export type Purchase = z.infer<typeof kitchen.purchase>;
/** As it is sent: what has a default may be left out. */
export type NewPurchase = z.input<typeof kitchen.purchaseRequest>;
export type UseFirstRow = z.infer<typeof kitchen.useFirstRow>;
export type JournalRow = z.infer<typeof kitchen.journalRow>;
export type ChangeDone = z.infer<typeof kitchen.changeDone>;
export type Reminder = z.infer<typeof reminderView>;
export type Me = z.infer<typeof devices.me>;
export type PairingStarted = z.infer<typeof devices.pairingStarted>;
export type SideDoors = z.infer<typeof sideDoors>;
export type Problem = z.infer<typeof problems.problem>;
export type TurnReply = z.infer<typeof turns.turnReply>;
/** As it is sent: what has a default may be left out. */
export type TurnRequest = z.input<typeof turns.turnRequest>;
export type ClientMessage = z.input<typeof socket.clientMessage>;
export type ServerMessage = z.infer<typeof socket.serverMessage>;
