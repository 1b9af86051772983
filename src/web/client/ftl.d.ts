/** Files of words (Fluent), bundled as text. */
declare module '*.ftl' {
  const text: string;
  export default text;
}
