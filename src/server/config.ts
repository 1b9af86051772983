/** Settings of the service, from the environment. Each has a default fit for one home computer. */
import { z } from 'zod';

const flag = z.enum(['true', 'false', '1', '0', '']).transform((value) => value === 'true' || value === '1');
const list = z.string().transform((text) => text.split(',').flatMap((part) => part.trim() || []));
const count = z.coerce.number().int().min(1);

const settings = z.object({
  /** Address to listen on. */
  HOST: z.string().default('127.0.0.1'),
  PORT: z.coerce.number().int().min(0).max(65_535).default(8080),
  /** Postgres URL; without one, the embedded store in DATA_DIR is used. */
  DATABASE_URL: z.string().optional(),
  DATA_DIR: z.string().default('.data'),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent']).default('info'),
  /** Log what people said. Off unless asked: it is private. */
  LOG_SPEECH: flag.default(false),
  /** Proxies whose X-Forwarded-For is believed: addresses or ranges, comma-separated. */
  TRUST_PROXY: list.default([]),
  /** Origins, besides our own, whose pages may open the socket: `https://kitchen.example`. */
  ORIGINS: list.default([]),
  /** Where phones reach this service: `https://kitchen.example`. Labels and codes hold it. */
  PUBLIC_URL: z.url({ protocol: /^https?$/ }).optional(),
  /** Cookies only over TLS. Browsers treat localhost as TLS; turn off only on a trusted home network. */
  SECURE_COOKIES: flag.default(true),
  /** Requests a minute from one address, and from one device. */
  ADDRESS_RATE: count.default(1_200),
  DEVICE_RATE: count.default(600),
  /** Messages a second over one socket, on the long run. */
  SOCKET_RATE: count.default(20),
  /** Sockets in all, and for one device. */
  SOCKETS: count.default(10_000),
  SOCKETS_A_DEVICE: count.default(8),
  /** Mebibytes that kitchens may take up in memory; one that is spoken to takes about one. */
  KITCHEN_MEMORY_MB: count.default(256),
  /** Shed load when the event loop lags by more milliseconds than this. */
  LAG_MS: count.default(1_000),
  /** Where timers, reminders and summaries are posted to, signed with the secret (Standard Webhooks). */
  WEBHOOK_URL: z.url({ protocol: /^https?$/ }).optional(),
  /** Base64 of 24 to 64 random bytes, with or without `whsec_` before it. */
  WEBHOOK_SECRET: z.string().min(32).optional(),
  /** Broker to publish them to, `tellshelf/<household id>/speech`: `mqtt://host:1883`, `mqtts://host:8883`. */
  MQTT_URL: z.url({ protocol: /^mqtts?$/ }).optional(),
  MQTT_USERNAME: z.string().optional(),
  MQTT_PASSWORD: z.string().optional(),
  /** Keys that sign notices to devices whose page is closed (Web Push, VAPID): `tellshelf notice-keys` makes them. */
  NOTICE_PUBLIC_KEY: z.string().min(80).max(100).optional(),
  NOTICE_PRIVATE_KEY: z.string().min(40).max(50).optional(),
  /** Whom a push service may ask when something is wrong: `mailto:somebody@kitchen.example`. */
  NOTICE_CONTACT: z
    .string()
    .regex(/^(?:mailto:|https:\/\/)./)
    .optional(),
  /** Seconds a closing server waits for turns under way. */
  DRAIN_SECONDS: count.default(6),
});
export type Config = z.infer<typeof settings>;

/** @throws Error that names each wrong setting. */
export const readConfig = (environment: Record<string, string | undefined>): Config => {
  const read = settings.safeParse(environment);
  if (read.success) return read.data;
  const wrong = read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`).join('; ');
  throw new Error(`Settings are wrong. ${wrong}`);
};
