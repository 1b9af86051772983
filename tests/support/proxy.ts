/** Stands before a server and does what networks and machines do: breaks, falls silent, is slow. */
import { once } from 'node:events';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

export interface Proxy {
  readonly port: number;
  /** Breaks every connection there is, as a restart does. */
  breakAll(): void;
  /** From now on connections there are carry nothing more; new ones work. */
  silence(): void;
  /** From now on nothing passes, over connections there are and over new ones: the machine behind is frozen. */
  freeze(): void;
  close(): Promise<void>;
}

export const startProxy = async (host: string, port: number): Promise<Proxy> => {
  const held = new Set<Socket>();
  const pairs = new Set<readonly [Socket, Socket]>();
  let frozen = false;
  const server = createServer((client) => {
    if (frozen) {
      client.on('error', () => undefined).pause();
      held.add(client);
      return;
    }
    const upstream = connect(port, host);
    const pair = [client, upstream] as const;
    pairs.add(pair);
    for (const [from, to] of [pair, [upstream, client] as const]) {
      from.on('data', (data) => void to.write(data));
      from.on('error', () => undefined);
      from.on('close', () => {
        pairs.delete(pair);
        to.destroy();
      });
    }
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  const silence = (): void => {
    for (const [client, upstream] of pairs) {
      client.removeAllListeners('data').pause();
      upstream.removeAllListeners('data').pause();
    }
  };
  return {
    port: (server.address() as AddressInfo).port,
    breakAll: () => {
      for (const [client] of pairs) client.destroy();
    },
    silence,
    freeze: () => {
      frozen = true;
      silence();
    },
    close: async () => {
      for (const client of [...held, ...[...pairs].map(([one]) => one)]) client.destroy();
      server.close();
      await once(server, 'close');
    },
  };
};
