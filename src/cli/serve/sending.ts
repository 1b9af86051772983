/** Timers, reminders and summaries sent out by webhook and MQTT, as the settings have it. */
import { randomUUID } from 'node:crypto';
import type { Logger } from 'pino';
import {
  createMqtt,
  createPush,
  createScheduler,
  createWebhook,
  keepTicking,
  type Carrier,
} from '../../schedule/index.js';
import type { Config } from '../../server/index.js';
import type { Store } from '../../store/port.js';
import type { Households } from '../../turn/index.js';

export interface SendingOptions {
  readonly store: Store;
  readonly households: Households;
  readonly config: Pick<
    Config,
    | 'WEBHOOK_URL'
    | 'WEBHOOK_SECRET'
    | 'MQTT_URL'
    | 'MQTT_USERNAME'
    | 'MQTT_PASSWORD'
    | 'NOTICE_PUBLIC_KEY'
    | 'NOTICE_PRIVATE_KEY'
    | 'NOTICE_CONTACT'
  >;
  readonly now: () => string;
  readonly logger: Logger;
}

const carriersFrom = ({ config, logger, store }: SendingOptions): Carrier[] => {
  const carriers: Carrier[] = [];
  if (config.WEBHOOK_URL !== undefined) {
    if (config.WEBHOOK_SECRET === undefined) throw new Error('WEBHOOK_URL needs WEBHOOK_SECRET as well');
    carriers.push(createWebhook({ url: config.WEBHOOK_URL, secret: config.WEBHOOK_SECRET }));
  }
  if (config.MQTT_URL !== undefined)
    carriers.push(
      createMqtt({
        url: config.MQTT_URL,
        ...(config.MQTT_USERNAME === undefined ? {} : { username: config.MQTT_USERNAME }),
        ...(config.MQTT_PASSWORD === undefined ? {} : { password: config.MQTT_PASSWORD }),
        onProblem: (error) => logger.warn({ err: error }, 'broker'),
      }),
    );
  const { NOTICE_PUBLIC_KEY: publicKey, NOTICE_PRIVATE_KEY: privateKey, NOTICE_CONTACT: contact } = config;
  if (publicKey !== undefined || privateKey !== undefined) {
    if (publicKey === undefined || privateKey === undefined || contact === undefined)
      throw new Error('Notices need NOTICE_PUBLIC_KEY, NOTICE_PRIVATE_KEY and NOTICE_CONTACT together');
    carriers.push(createPush({ store, publicKey, privateKey, contact }));
  }
  return carriers;
};

/** Starts what the settings ask for. Returns how to stop it; what is under way is finished first. */
export const startSending = async (options: SendingOptions): Promise<() => Promise<void>> => {
  const { store, households, now, logger } = options;
  const carriers = carriersFrom(options);
  if (carriers.length === 0) return () => Promise.resolve();
  const scheduler = createScheduler({
    store,
    carriers,
    owner: randomUUID(),
    now,
    households: {
      look: (householdId) => households.look(householdId),
      say: (around, answer) => households.say(around, answer),
    },
    // Ids only: what is told is private.
    onProblem: (error, about) => logger.warn({ err: error, ...about }, 'not sent yet'),
  });
  return keepTicking(scheduler, (error) => logger.error({ err: error }, 'not planned'));
};
