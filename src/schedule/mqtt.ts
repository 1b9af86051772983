/**
 * Publishes tellings by MQTT 5, quality of service 1, to `tellshelf/<household id>/speech`
 * (the id percent-encoded). The broker says when nobody is subscribed: then they are kept.
 */
import { connect, type IClientOptions } from 'mqtt';
import type { Id } from '../kitchen/model.js';
import { CarrierError, type Carrier } from './telling.js';

export interface MqttOptions {
  /** `mqtt://host:1883` or `mqtts://host:8883`. */
  readonly url: string;
  readonly username?: string;
  readonly password?: string;
  /** Households it is for; left out: all. */
  readonly households?: readonly Id[];
  /** Told of lost connections; they are made again by themselves. */
  readonly onProblem?: (error: Error) => void;
}

/** OASIS MQTT 5.0, section 3.4.2.1: the message was accepted and nobody is subscribed. */
const NO_MATCHING_SUBSCRIBERS = 0x10;
/** Seconds after which a broker drops what a subscriber has not fetched: by then it is no news. */
const EXPIRES = 16 * 3600;

/** Where a household's tellings are published. `/`, `+` and `#` mean something to brokers. */
export const topicOf = (householdId: Id): string => `tellshelf/${encodeURIComponent(householdId)}/speech`;

/** Connects at once and stays connected; carrying while it is not fails, to be tried again. */
export const createMqtt = (options: MqttOptions): Carrier => {
  const settings: IClientOptions = {
    protocolVersion: 5,
    clean: true,
    reconnectPeriod: 2_000,
    connectTimeout: 10_000,
    ...(options.username === undefined ? {} : { username: options.username }),
    ...(options.password === undefined ? {} : { password: options.password }),
  };
  const client = connect(options.url, settings);
  client.on('error', (error) => options.onProblem?.(error));
  const answers = new Map<number, number>();
  client.on('packetreceive', (packet) => {
    if (packet.cmd === 'puback' && packet.messageId !== undefined)
      answers.set(packet.messageId, packet.reasonCode ?? 0);
  });

  return {
    name: 'mqtt',
    serves: (householdId) => options.households?.includes(householdId) ?? true,
    carry: async (delivery, signal) => {
      // Queued by the client as well as by us it could go out twice.
      if (!client.connected) throw new CarrierError('no connection to the broker');
      const published = client.publishAsync(topicOf(delivery.household), JSON.stringify(delivery), {
        qos: 1,
        properties: {
          contentType: 'application/json',
          payloadFormatIndicator: true,
          messageExpiryInterval: EXPIRES,
          userProperties: { id: delivery.id, kind: delivery.kind },
        },
      });
      const messageId = client.getLastMessageId();
      const stopped = new Promise<never>((_, reject) => {
        signal.addEventListener('abort', () => reject(new CarrierError('the broker did not answer')), {
          once: true,
        });
      });
      await Promise.race([published, stopped]);
      const reason = answers.get(messageId) ?? 0;
      answers.delete(messageId);
      return reason === NO_MATCHING_SUBSCRIBERS ? 'nobody' : 'spoken';
    },
    close: async () => {
      await client.endAsync(true);
    },
  };
};
