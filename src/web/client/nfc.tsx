/** A thing's address for an NFC chip: written from the page where Web NFC is, shown as bytes elsewhere. */
import { useState } from 'preact/hooks';
import { SaidHere, useDoing } from './form.js';
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
      <h2 id="nfc">A chip for {name}, for a phone to touch</h2>
      <p>Touching the chip with a phone opens the board with this in hand.</p>
      {Maker === undefined ? (
        <details>
          <summary>This browser cannot put it on a chip: what goes on it</summary>
          <p>
            As an address: <code>{address}</code>
          </p>
          <p>
            As the bytes of its one record: <code>{inHex(uriRecord(address))}</code>
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
              `${name} is on the chip.`,
            ).finally(() => setWaiting(false));
          }}
        >
          {waiting ? 'Hold the chip to the back of the phone' : 'Put it on a chip'}
        </button>
      )}
      <SaidHere said={said} />
    </section>
  );
};
