/** `npm run bench [NAME…]`: the measurements, one file each; all when none is named. */
const benches: Readonly<Record<string, () => Promise<void>>> = {
  understanding: async () => (await import('./understanding.js')).benchUnderstanding(),
  turn: async () => (await import('./turn.js')).benchTurn(),
  http: async () => (await import('./http.js')).benchHttp(),
  names: async () => (await import('./names.js')).benchNames(),
  grammar: async () => (await import('./grammar.js')).benchGrammar(),
  safety: async () => (await import('./safety.js')).benchSafety(),
  kitchen: async () => (await import('./kitchen.js')).benchKitchen(),
  bell: async () => (await import('./bell.js')).benchBell(),
  store: async () => (await import('./store.js')).benchStore(),
};

const asked = process.argv.slice(2);
for (const name of asked.length > 0 ? asked : Object.keys(benches)) {
  const bench = benches[name];
  if (bench === undefined) throw new Error(`There is no measurement "${name}".`);
  await bench();
}
