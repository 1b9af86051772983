import { describe, expect, it } from 'vitest';
import { readNdef } from '../../src/kitchen/codes/ndef.js';
import { uriRecord } from '../../src/web/client/ndef-record.js';

describe('an address for an NFC chip', () => {
  it('is read back by our own reader', () => {
    for (const address of [
      'https://kitchen.example/this/item/stew-1',
      'http://10.0.0.7:8080/this/marker/m%201',
    ])
      expect(JSON.stringify(readNdef(uriRecord(address)))).toContain(address);
  });

  it('is refused when it is too long for one short record', () => {
    expect(() => uriRecord(`https://kitchen.example/${'x'.repeat(300)}`)).toThrow(RangeError);
  });
});
