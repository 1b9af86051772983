/** The parts of the reference library that the tests use; it has no types of its own. */
declare module 'ndef' {
  type NdefRecord = object;
  const ndef: {
    textRecord(text: string, language?: string): NdefRecord;
    uriRecord(uri: string): NdefRecord;
    encodeMessage(records: readonly NdefRecord[]): number[];
  };
  export default ndef;
}
