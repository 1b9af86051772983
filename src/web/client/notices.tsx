/** Whether timers reach this device while its page is closed. Shown only where service and browser can. */
import { useEffect, useState } from 'preact/hooks';
import type { NoticeState } from '../../../shared/wire/devices.js';
import { t } from './language.js';
import { plainly, service } from './service.js';

/** A timer that was stopped on a page needs no notice any more. */
export const closeNotice = (id: string): void => {
  if (!('serviceWorker' in navigator)) return;
  void navigator.serviceWorker
    .getRegistration()
    .then((registration) => registration?.getNotifications({ tag: id }))
    .then((notices) => notices?.forEach((notice) => notice.close()))
    .catch(() => undefined);
};

const canNotify = (): boolean => 'serviceWorker' in navigator && 'PushManager' in window;
/** Browsers that take notices only for pages on the home screen say so by having no PushManager in a tab. */
const isAppleTab = (): boolean => /iPhone|iPad/.test(navigator.userAgent) && !canNotify();

const bytesOf = (base64url: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64url.replace(/-/g, '+').replace(/_/g, '/')), (char) => char.charCodeAt(0));

/** @returns the message that says why not, or null when notices come here now */
const begin = async (key: string): Promise<string | null> => {
  if ((await Notification.requestPermission()) !== 'granted') return t('notice-denied');
  const registration = await navigator.serviceWorker.ready;
  const old = await registration.pushManager.getSubscription();
  // One made with another key of the service brings nothing.
  await old?.unsubscribe();
  const made = await registration.pushManager.subscribe({
    userVisibleOnly: true,
    applicationServerKey: bytesOf(key),
  });
  const { endpoint, keys } = made.toJSON();
  if (endpoint === undefined || keys?.['p256dh'] === undefined || keys['auth'] === undefined)
    return t('notice-failed');
  await service.call('PUT', '/v1/notices', { endpoint, p256dh: keys['p256dh'], auth: keys['auth'] });
  return null;
};

const end = async (): Promise<void> => {
  await service.call('DELETE', '/v1/notices');
  const registration = await navigator.serviceWorker.ready;
  await (await registration.pushManager.getSubscription())?.unsubscribe();
};

export const Notices = () => {
  const [state, setState] = useState<NoticeState | null>(null);
  const [wrong, setWrong] = useState('');
  useEffect(() => {
    service.call<NoticeState>('GET', '/v1/notices').then(setState, () => undefined);
  }, []);
  if (state === null || state.key === null) return null;
  const { key, here } = state;
  const turn = async (): Promise<void> => {
    try {
      const problem = here ? await end().then(() => null) : await begin(key);
      setWrong(problem ?? '');
      if (problem === null) setState({ key, here: !here });
    } catch (error) {
      // What a browser says of its push service is no sentence for anybody.
      setWrong(error instanceof DOMException ? t('notice-failed') : plainly(error));
    }
  };
  return (
    <section aria-labelledby="notices">
      <h2 id="notices">{t('notice-heading')}</h2>
      <p role="status">{t(here ? 'notice-is-on' : 'notice-is-off')}</p>
      {canNotify() && (
        <button type="button" onClick={() => void turn()}>
          {t(here ? 'notice-off' : 'notice-on')}
        </button>
      )}
      {isAppleTab() && <p>{t('notice-first-install')}</p>}
      <p role="alert" class="notice">
        {wrong}
      </p>
    </section>
  );
};
