/** A thing's address for an NFC chip: written from the page where Web NFC is, shown as bytes elsewhere. */
import { useState } from 'preact/hooks';
import { SaidHere, useDoing } from './form.js';
import { t } from './language.js';
import { uriRecord } from './ndef-record.js';

interface Writer {
  write(message: { records: readonly { recordType: 'url'; data: string }[] }): Promise<void>;
}

const writerMaker = (): (new () => Writer) | undefined =>
  (window as unknown as Record<string, (new () => Writer) | undefined>)['NDEFReader'];

const inHex = (bytes: Uint8Array): string =>
  [...bytes].map((byte) => byte.toString(16).padStart(2, '0').toUpperCase()).join(' ');

export const Nfc = ({ name, address }: { name: string; address: string }) => {
  const Maker = writerMaker();
  const [waiting, setWaiting] = useState(false);
  const { said, run } = useDoing();
  return (
    <section aria-labelledby="nfc">
      <h2 id="nfc">{t('nfc-heading', { name })}</h2>
      <p>{t('nfc-how')}</p>
      {Maker === undefined ? (
        <details>
          <summary>{t('nfc-cannot')}</summary>
          <p>
            {t('nfc-address')} <code>{address}</code>
          </p>
          <p>
            {t('nfc-bytes')} <code>{inHex(uriRecord(address))}</code>
          </p>
        </details>
      ) : (
        <button
          type="button"
          disabled={waiting}
          onClick={() => {
            setWaiting(true);
            void run(
              () => new Maker().write({ records: [{ recordType: 'url', data: address }] }),
              t('nfc-done', { name }),
            ).finally(() => setWaiting(false));
          }}
        >
          {t(waiting ? 'nfc-hold' : 'nfc-put')}
        </button>
      )}
      <SaidHere said={said} />
    </section>
  );
};
