export interface Hypothesis {
  readonly text: string;
  readonly confidence?: number;
}
