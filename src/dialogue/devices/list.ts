/** Which devices may speak for this household, by voice. */
import { andMore, inGroups } from '../describe/lists.js';
import { type Reply, type Turn, ago, list, say } from '../handler.js';

/** "Which devices are there": by name, last heard first. */
export const listDevices = (turn: Turn): Reply => {
  if (!turn.devices) return { parts: [], lookUp: { kind: 'devices' } };
  const devices = [...turn.devices].sort((a, b) => (b.lastSeenAt ?? '').localeCompare(a.lastSeenAt ?? ''));
  if (devices.length === 0) return { parts: [say('no-devices')], count: 0 };
  const names = devices.map(({ name, lastSeenAt }) =>
    say('device', { name, ...(lastSeenAt === null ? {} : { when: ago(lastSeenAt) }) }),
  );
  const { first, more, left } = inGroups(names);
  return {
    parts: [say('devices-here', { count: devices.length, devices: list(first) }), ...andMore(left)],
    more,
    names: devices.map(({ name }) => name),
    count: devices.length,
  };
};
