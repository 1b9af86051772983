/** MQTT 5 against a real broker (mosquitto) on loopback. */
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { connectAsync, type IPublishPacket, type MqttClient } from 'mqtt';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createMqtt, topicOf, type Carrier, type Delivery } from '../../src/schedule/index.js';
import { freePort } from '../support/free-port.js';

const everybody = { personId: null, quiet: false };

let folder: string;
let broker: ChildProcess;
let url: string;
let listener: MqttClient;
let carrier: Carrier;

/** Tries until the broker takes connections. */
const patiently = async (address: string): Promise<MqttClient> => {
  for (let attempt = 0; ; attempt++) {
    try {
      return await connectAsync(address, { protocolVersion: 5, reconnectPeriod: 0 });
    } catch (error) {
      if (attempt > 50) throw error;
      await wait(100);
    }
  }
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'mqtt-'));
  const port = await freePort();
  const settings = join(folder, 'mosquitto.conf');
  writeFileSync(settings, `listener ${port} 127.0.0.1\nallow_anonymous true\n`);
  const program = existsSync('/usr/sbin/mosquitto') ? '/usr/sbin/mosquitto' : 'mosquitto';
  if (spawnSync(program, ['-h']).error !== undefined)
    throw new Error('mosquitto is needed to test publishing: install the Debian package "mosquitto"');
  broker = spawn(program, ['-c', settings], { stdio: 'ignore' });
  url = `mqtt://127.0.0.1:${port}`;
  listener = await patiently(url);
  carrier = createMqtt({ url });
});
afterAll(async () => {
  await carrier?.close();
  await listener?.endAsync(true);
  broker?.kill();
  if (folder) rmSync(folder, { recursive: true });
});

const delivery = (household: string, id = 'timer.r1.1778778000'): Delivery => ({
  id,
  household,
  kind: 'timer',
  due: '2026-05-14T17:00:00.000Z',
  sentAt: '2026-05-14T17:00:00.500Z',
  speech: { ssml: '<speak/>', text: 'The rice timer is done.', sentences: ['The rice timer is done.'] },
});
const soon = (): AbortSignal => AbortSignal.timeout(5_000);

const connected = async (one: Carrier, household: string): Promise<void> => {
  for (let attempt = 0; attempt < 50; attempt++) {
    try {
      await one.carry(delivery(household), soon(), everybody);
      return;
    } catch {
      await wait(100);
    }
  }
  throw new Error('no connection to the broker');
};

describe('the broker', () => {
  it('is told when there is nobody to hear, so that the telling is kept', async () => {
    await connected(carrier, 'nobody-here');
    expect(await carrier.carry(delivery('nobody-here'), soon(), everybody)).toBe('nobody');
  });

  it('hands a telling to who listens to the household’s topic, whole and once', async () => {
    await listener.subscribeAsync('tellshelf/+/speech', { qos: 1 });
    const heard: IPublishPacket[] = [];
    listener.on('message', (_topic, _payload, packet) => heard.push(packet));
    const sent = delivery('marta/kitchen #1');
    expect(await carrier.carry(sent, soon(), everybody)).toBe('spoken');
    await wait(100);
    expect(heard).toHaveLength(1);
    const [packet] = heard as [IPublishPacket];
    expect(packet.topic).toBe('tellshelf/marta%2Fkitchen%20%231/speech');
    expect(packet.topic).toBe(topicOf(sent.household));
    expect(JSON.parse(packet.payload.toString())).toEqual(sent);
    expect(packet.qos).toBe(1);
    expect(packet.retain).toBe(false);
    expect(packet.properties).toMatchObject({
      contentType: 'application/json',
      userProperties: { id: sent.id },
    });
  });

  it('that cannot be reached makes it fail at once, to be tried again, and never queue', async () => {
    const nowhere = createMqtt({ url: `mqtt://127.0.0.1:${await freePort()}` });
    await expect(nowhere.carry(delivery('h1'), soon(), everybody)).rejects.toThrow(
      'no connection to the broker',
    );
    await nowhere.close();
  });
});
