/** A statistical toolkit trained on the same sentences, beside ours in the same run. */
import type { Case } from './cases.js';

/** The part of `@nlpjs/basic` used here; it ships no types. */
interface Toolkit {
  addLanguage(language: string): void;
  addDocument(language: string, text: string, intent: string): void;
  train(): Promise<void>;
  process(language: string, text: string): Promise<{ intent: string; score: number }>;
}
interface Dock {
  get(name: 'nlp'): Toolkit;
}

const textOf = ({ hypotheses }: Case): string => hypotheses[0]!.text;

/** Trains on `train` (labels that are not ours are one class, "elsewhere") and reports on `val`. */
export const compareWithToolkit = async (
  train: readonly Case[],
  val: readonly Case[],
  ours: Readonly<Record<string, unknown>>,
  say: (line: string) => void,
): Promise<void> => {
  const name = '@nlpjs/basic';
  const { dockStart } = (await import(name)) as {
    dockStart: (settings: object) => Promise<Dock>;
  };
  const dock = await dockStart({ settings: { nlp: { autoSave: false, log: false } }, use: ['Basic'] });
  const nlp = dock.get('nlp');
  nlp.addLanguage('en');
  for (const heard of train)
    nlp.addDocument('en', textOf(heard), heard.label! in ours ? heard.label! : 'elsewhere');
  await nlp.train();
  let right = 0;
  let all = 0;
  let falseAccepts = 0;
  let others = 0;
  for (const heard of val) {
    const { intent } = await nlp.process('en', textOf(heard));
    if (heard.label! in ours) {
      all += 1;
      if (intent === heard.label) right += 1;
    } else {
      others += 1;
      if (intent in ours) falseAccepts += 1;
    }
  }
  say(
    `\n== @nlpjs/basic on the same val: ${right} of ${all} of ours (${((100 * right) / all).toFixed(1)}%), false accepts ${falseAccepts} of ${others} (${((100 * falseAccepts) / others).toFixed(2)}%)`,
  );
};
