/**
 * Letting a device in, giving it another name, sending it away. Only who speaks on an owner's device may.
 * What is done goes with the turn as an effect: it is committed with it, or the turn is decided again.
 */
import { deviceCalled } from '../../understanding/index.js';
import type { KnownDevice } from '../api.js';
import { type Handler, type Reply, type Turn, list, say, tell } from '../handler.js';

/** Codes are so many digits, see the pairing of devices in `src/server`. */
const CODE_DIGITS = 8;

const mayNot = (turn: Turn): Reply | null => {
  if (turn.speaker.owner !== true) return tell('devices-for-owners');
  return turn.state.practice ? tell('devices-not-in-practice') : null;
};

/** "1234 5678" as it is said, in two breaths. */
const codeWords = (code: string) =>
  list(
    [code.slice(0, CODE_DIGITS / 2), code.slice(CODE_DIGITS / 2)].map((text) => ({ kind: 'letters', text })),
  );

export const letIn: Handler = (act, turn) => {
  const no = mayNot(turn);
  if (no) return no;
  const { code } = act.slots;
  if (code?.length !== CODE_DIGITS) {
    const question = code ? say('ask-code-again', { count: code.length }) : say('ask-code');
    return { parts: [], ask: { slot: 'code', question, expecting: 'code' } };
  }
  if (turn.knockedOn?.code !== code) return { parts: [], lookUp: { kind: 'code', code } };
  const { found } = turn.knockedOn;
  if (found === 'too-many-guesses') return tell('codes-too-many');
  if (found === 'nobody') return tell('code-nobody', { code: codeWords(code) });
  const { name } = found;
  return {
    parts: [say('device-let-in', { name })],
    details: [say('device-may')],
    effects: [{ kind: 'let-in', code, deviceId: turn.newId() }],
    doubt: say('confirm-let-in', { name }),
  };
};

const wordsOf = (turn: Turn, name: string): readonly string[] => deviceCalled(name, turn.locale).words;

/** The devices all the words fit; those that have no other words first. */
const named = (turn: Turn, devices: readonly KnownDevice[], said: string): readonly KnownDevice[] => {
  const { words: wanted, here } = deviceCalled(said, turn.locale);
  if (here) return devices.filter(({ id }) => id === turn.speaker.deviceId);
  const fitting = devices.filter(({ name }) => {
    const has = wordsOf(turn, name);
    return wanted.every((word) => has.includes(word));
  });
  const whole = fitting.filter(({ name }) => wordsOf(turn, name).length === wanted.length);
  return whole.length === 1 ? whole : fitting;
};

/** Asked of devices, whose ids are no records of the kitchen: a word of the name tells which. */
const oneNamed = (
  turn: Turn,
  said: string | undefined,
  then: (device: KnownDevice, all: readonly KnownDevice[]) => Reply,
): Reply => {
  const { devices } = turn;
  if (!devices) return { parts: [], lookUp: { kind: 'devices' } };
  const picked = devices.filter(({ id }) => turn.picked.device?.includes(id));
  const fitting = picked.length > 0 ? picked : named(turn, devices, said ?? '');
  const [device] = fitting;
  if (device && fitting.length === 1) return then(device, devices);
  const which = fitting.length > 1 ? fitting : devices;
  const names = list(
    which.map(({ name }) => say('device-name', { name })),
    fitting.length > 1,
  );
  if (fitting.length > 1)
    return {
      parts: [],
      ask: {
        slot: 'device',
        question: say('which-device', { devices: names }),
        expecting: 'words',
        choices: fitting.map(({ id, name }) => ({ ids: [id], label: say('device-name', { name }) })),
      },
    };
  return {
    parts: [
      devices.length === 0
        ? say('no-devices')
        : say('device-unknown', { device: wordsOf(turn, said ?? '').join(' '), devices: names }),
    ],
  };
};

export const renameDevice: Handler = (act, turn) => {
  const no = mayNot(turn);
  if (no) return no;
  const { device: said, words } = act.slots;
  return oneNamed(turn, said, (device) => {
    if (!words)
      return {
        parts: [],
        ask: { slot: 'words', question: say('ask-device-name', { name: device.name }), expecting: 'words' },
      };
    if (
      turn.devices?.some(
        ({ id, name }) =>
          id !== device.id && wordsOf(turn, name).join(' ') === wordsOf(turn, words).join(' '),
      )
    )
      return tell('device-name-taken', { name: words });
    return {
      parts: [say('device-renamed', { was: device.name, name: words })],
      effects: [{ kind: 'rename-device', deviceId: device.id, name: words }],
      doubt: say('confirm-rename-device', { was: device.name, name: words }),
    };
  });
};

export const removeDevice: Handler = (act, turn) => {
  const no = mayNot(turn);
  if (no) return no;
  return oneNamed(turn, act.slots.device, (device, devices) => {
    const here = device.id === turn.speaker.deviceId;
    const { name } = device;
    if (device.owner && devices.filter(({ owner }) => owner).length === 1)
      return tell('device-last-owner', { name });
    return {
      parts: [say(here ? 'device-removed-here' : 'device-removed', { name })],
      effects: [{ kind: 'send-away-device', deviceId: device.id }],
      // For good, and nothing takes it back: always asked.
      confirm: say(here ? 'confirm-remove-device-here' : 'confirm-remove-device', { name }),
    };
  });
};
