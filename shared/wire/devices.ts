/** Devices and pairing, on the wire. */
import { z } from 'zod';

export const scope = z
  .enum(['speak', 'help', 'own'])
  .describe(
    '`speak`: hold a conversation, and press on a page what may be said. `help`: also correct the record from pages. `own`: also devices, people, settings, export, deletion.',
  );

export const deviceName = z
  .string()
  .trim()
  .min(1)
  .max(60)
  // eslint-disable-next-line no-control-regex
  .regex(/^[^\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]+$/, 'no control or direction characters');

export const device = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    scope,
    personId: z.string().nullable(),
    pairedAt: z.iso.datetime(),
    lastSeenAt: z.iso.datetime().nullable(),
    revokedAt: z.iso.datetime().nullable(),
    thisOne: z.boolean(),
  })
  .meta({ id: 'Device' });

export const pairingRequest = z.strictObject({ name: deviceName });

export const pairingStarted = z
  .strictObject({
    code: z.string().describe('Eight digits to say or show, in two groups of four.'),
    spoken: z.string().describe('The code as it is said, digit by digit.'),
    token: z.string().describe('Becomes the device’s token once an owner confirms the code. Keep it secret.'),
    expiresAt: z.iso.datetime(),
  })
  .meta({ id: 'PairingStarted' });

export const pairingConfirm = z.strictObject({
  code: z
    .string()
    .max(20)
    .transform((code) => code.replace(/[\s-]/g, ''))
    .pipe(z.string().regex(/^\d{8}$/, 'eight digits')),
  scope: scope.default('speak'),
  personId: z.string().max(128).nullable().default(null),
});

export const invitationRequest = z.strictObject({
  name: deviceName.describe('What the device will be called.'),
  scope: scope.default('speak'),
  personId: z.string().max(128).nullable().default(null),
});

/** What an invitation grants, as its first part says (base64url of JSON). */
export const invitationGrant = z.strictObject({
  household: z.string().max(128),
  householdName: z.string().max(80),
  name: z.string().max(60),
  scope: z.enum(['speak', 'help', 'own']),
  personId: z.string().max(128).nullable(),
  by: z.string().max(128),
});
export type InvitationGrant = z.infer<typeof invitationGrant>;

export const invitationText = z.string().min(1).max(2_000);

export const invitationMade = z
  .strictObject({
    invitation: z.string(),
    address: z.string().describe('To open on the new device: a link, or what a square code holds.'),
    addressIsLocal: z.boolean().describe('That address works on the machine itself only.'),
    expiresAt: z.iso.datetime(),
  })
  .meta({ id: 'InvitationMade' });
export type InvitationMade = z.infer<typeof invitationMade>;

export const invitationAccepted = z
  .strictObject({ token: z.string().describe('The device’s key. Keep it secret.'), device })
  .meta({ id: 'InvitationAccepted' });

export const deviceChange = z.strictObject({
  name: deviceName.optional(),
  scope: scope.optional(),
  personId: z.string().max(128).nullable().optional(),
});

/** A browser's PushSubscription, as the W3C Push API has it. */
export const noticeAddress = z
  .strictObject({
    endpoint: z.url({ protocol: /^https$/ }).max(1_000),
    p256dh: z.string().regex(/^[\w-]{80,100}={0,2}$/, 'base64url of 65 bytes'),
    auth: z.string().regex(/^[\w-]{20,30}={0,2}$/, 'base64url of 16 bytes'),
  })
  .meta({ id: 'NoticeAddress' });

export const noticeState = z
  .strictObject({
    key: z.string().nullable().describe('The service’s public key (VAPID); null: it sends no notices.'),
    here: z.boolean().describe('They go to this device.'),
  })
  .meta({ id: 'NoticeState' });
export type NoticeState = z.infer<typeof noticeState>;

/** Who asks, as the service sees it. */
export const me = z
  .strictObject({
    household: z.strictObject({ id: z.string(), name: z.string(), locale: z.string(), timeZone: z.string() }),
    device: z.strictObject({ id: z.string(), name: z.string(), scope }),
  })
  .meta({ id: 'Me' });

/** One line of the devices' journal. */
export const deviceEntry = z
  .strictObject({
    at: z.iso.datetime(),
    deed: z.enum(['let-in', 'change', 'send-away']),
    deviceId: z.string(),
    name: z.string().describe('What it was called after it.'),
    scope: z.enum(['speak', 'help', 'own']).describe('What it could do after it.'),
    by: z.string().nullable().describe('The device that asked for it; null: whoever runs the machine.'),
    whence: z.string().nullable().describe('The address it was asked from, where there was one.'),
  })
  .meta({ id: 'DeviceEntry' });
