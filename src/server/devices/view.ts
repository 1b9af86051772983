import type { z } from 'zod';
import type { device as deviceView } from '../../../shared/wire/devices.js';
import type { Device } from '../../store/port.js';

/** A device as its owner sees it: never the token or its hash. */
export const asView = (device: Device, asker: Device): z.infer<typeof deviceView> => ({
  id: device.id,
  name: device.name,
  scope: device.scope,
  personId: device.personId,
  pairedAt: device.pairedAt,
  lastSeenAt: device.lastSeenAt,
  revokedAt: device.revokedAt,
  thisOne: device.id === asker.id,
});
