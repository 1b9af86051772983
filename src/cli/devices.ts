/** `tellshelf pair` and `tellshelf devices`: who may speak here, for whoever runs the machine. */
import { randomUUID } from 'node:crypto';
import { Option, type Command } from 'commander';
import type { Device, DeviceDeed, Store } from '../store/port.js';
import { whereabouts, withStore, type Where } from './with-store.js';

const inHousehold = async <T>(
  where: Where,
  work: (store: Store, householdId: string) => Promise<T>,
): Promise<T> =>
  withStore(where, async (store) => {
    const { chooseHousehold } = await import('./which-household.js');
    return work(store, await chooseHousehold(store, where.household));
  });

/** @throws Error in plain words. */
const change = async (where: Where, deed: DeviceDeed): Promise<void> =>
  inHousehold(where, async (store, householdId) => {
    // Who runs the machine may do it whatever the devices may.
    const done = await store.changeDevices(householdId, {
      deeds: [deed],
      by: null,
      at: new Date().toISOString(),
    });
    if (done.outcome === 'done') return;
    throw new Error(
      done.why === 'sent-away'
        ? 'That device was sent away, which is for good. "tellshelf pair" lets one in.'
        : 'There is no such device here. "tellshelf devices" lists them.',
    );
  });

const line = ({ id, name, scope, pairedAt, revokedAt }: Device): string =>
  `${id}\t${name}\t${scope}\tpaired ${pairedAt.slice(0, 10)}${revokedAt === null ? '' : `\trevoked ${revokedAt.slice(0, 10)}`}\n`;

export const addDeviceCommands = (program: Command): void => {
  whereabouts(program.command('pair'), true)
    .description('Let a device in: prints its key, once.')
    .requiredOption('--name <name>', 'what to call it, e.g. "kitchen speaker"')
    .addOption(
      new Option('--scope <scope>', 'what it may do').choices(['speak', 'help', 'own']).default('speak'),
    )
    .option('--person <id>', 'whose it is')
    .action(async (flags: Where & { name: string; scope: Device['scope']; person?: string }) => {
      const { hashOf, newToken } = await import('../server/tokens.js');
      const token = newToken();
      await inHousehold(flags, async (store, householdId) => {
        const kitchen = await store.loadKitchen(householdId);
        if (flags.person !== undefined && !kitchen?.people.has(flags.person)) {
          throw new Error(`There is no person "${flags.person}" here.`);
        }
        await store.addDevice({
          id: randomUUID(),
          householdId,
          name: flags.name,
          tokenHash: hashOf(token),
          scope: flags.scope,
          personId: flags.person ?? null,
          pairedAt: new Date().toISOString(),
          lastSeenAt: null,
          revokedAt: null,
        });
      });
      process.stdout.write(`${token}\n`);
    });

  const devices = program.command('devices').description('Devices that may speak here.');
  whereabouts(devices.command('list', { isDefault: true }), true)
    .description('List them: id, name, what each may do.')
    .action((flags: Where) =>
      inHousehold(flags, async (store, householdId) => {
        for (const device of await store.devices(householdId)) process.stdout.write(line(device));
      }),
    );
  whereabouts(devices.command('feeds <id>'), true)
    .description('Addresses for a calendar, the list to buy and another speech front, made for one device.')
    .option(
      '--address <url>',
      'where this service is reached',
      process.env['PUBLIC_URL'] ?? 'http://localhost:8080',
    )
    .action(async (id: string, flags: Where & { address: string }) => {
      const { pathsOf } = await import('../server/side-doors/keys.js');
      await inHousehold(flags, async (store, householdId) => {
        const device = (await store.devices(householdId)).find(
          (one) => one.id === id && one.revokedAt === null,
        );
        if (!device) throw new Error('There is no such device here. "tellshelf devices" lists them.');
        const { calendar, listText, listJson, wall, turns } = pathsOf(device);
        const base = flags.address.replace(/\/$/, '');
        for (const [what, path] of Object.entries({
          calendar,
          list: listText,
          json: listJson,
          wall,
          turns: turns.url,
        }))
          process.stdout.write(`${what}\t${base}${path}\n`);
        process.stdout.write(`secret\t${turns.secret}\n`);
      });
    });
  whereabouts(devices.command('rename <id> <name>'), true)
    .description('Call one something else.')
    .action((id: string, name: string, flags: Where) => change(flags, { kind: 'change', id, name }));
  whereabouts(devices.command('revoke <id>'), true)
    .description('Its key stops working, for good: within a second on servers that run.')
    .action((id: string, flags: Where) => change(flags, { kind: 'send-away', id }));
};
