/** The general toolkit that is measured beside ours: an intent classifier with named entities. */
interface Nlp {
  forceNER: boolean;
  settings: { log?: unknown };
  addLanguage(language: string): void;
  addDocument(language: string, text: string, intent: string): void;
  addNerRuleOptionTexts(language: string, entity: string, option: string, texts: string[]): void;
  train(): Promise<void>;
  process(language: string, text: string): Promise<{ intent: string }>;
}

export interface Classifier {
  readonly classify: (text: string, withNames: boolean) => Promise<{ readonly intent: string }>;
}

export interface Example {
  readonly text: string;
  readonly intent: string;
}

/** `@nlpjs/basic`, trained on the examples; it looks for the names in each sentence when asked to. */
export const trainClassifier = async (
  examples: readonly Example[],
  names: readonly string[],
): Promise<Classifier> => {
  // The package has no types.
  // eslint-disable-next-line @typescript-eslint/ban-ts-comment
  // @ts-ignore
  const { dockStart } = (await import('@nlpjs/basic')) as unknown as {
    dockStart(settings: object): Promise<{ get(name: string): Nlp }>;
  };
  const dock = await dockStart({
    settings: { nlp: { languages: ['en'], autoSave: false, forceNER: true, log: false } },
    use: ['Basic'],
  });
  const nlp = dock.get('nlp');
  nlp.addLanguage('en');
  for (const { text, intent } of examples) nlp.addDocument('en', text, intent);
  names.forEach((name, i) => nlp.addNerRuleOptionTexts('en', 'item', `n${i}`, [name]));
  await nlp.train();
  return {
    classify: (text, withNames) => {
      nlp.forceNER = withNames;
      return nlp.process('en', text);
    },
  };
};
