const { readdirSync } = require('node:fs');
const { join } = require('node:path');

/** Which room may look into which. Read top to bottom: lower rooms never import higher ones. */
const room = (name) => `^src/${name}/`;
const rule = (name, from, to) => ({ name, severity: 'error', from: { path: from }, to: { path: to } });
/** What each room may import, besides itself, libraries and project-files. */
const may = {
  terms: [],
  protocol: ['terms'],
  grammar: [],
  understanding: ['grammar', 'protocol', 'terms'],
  kitchen: ['terms'],
  safety: ['terms', 'kitchen'],
  speech: ['terms'],
  dialogue: ['terms', 'protocol', 'understanding', 'kitchen', 'safety', 'speech'],
  store: ['terms', 'kitchen'],
  schedule: ['terms', 'kitchen', 'safety', 'dialogue', 'speech', 'store'],
  turn: ['terms', 'protocol', 'grammar', 'understanding', 'kitchen', 'safety', 'speech', 'dialogue', 'store'],
  labels: ['terms', 'kitchen', 'speech'],
  plots: ['terms', 'kitchen', 'speech'],
  biasing: ['terms', 'kitchen', 'grammar'],
  web: ['terms'],
  server: [
    ...['terms', 'turn', 'store', 'kitchen', 'safety', 'schedule', 'labels', 'plots', 'web', 'speech'],
    'biasing',
  ],
};
const below = Object.keys(may);
may.cli = below;
const rooms = [...below, 'cli'];
const listed = new Set(rooms);
const unlisted = readdirSync(join(__dirname, 'src'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !listed.has(entry.name))
  .map((entry) => entry.name);
if (unlisted.length > 0)
  throw new Error(`No rule says what may be imported by src/${unlisted.join(', src/')}.`);

module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true } },
    ...Object.entries(may).map(([name, allowed]) =>
      rule(
        `${name}-looks-down-only`,
        room(name),
        `^src/(${rooms.filter((other) => other !== name && !allowed.includes(other)).join('|') || '-'})/`,
      ),
    ),
    // What guidance says of a food is asked of the gate, by the doors of its room: no other room reads a table.
    rule('guidance-by-its-door', '^src/(?!safety/)', '^src/safety/(?!(index|api)\\.ts$)'),
    rule('tables-only-in-safety', '^src/(?!safety/)', '^shared/tables/'),
    // Of safety itself, two doors lead to the gate: what is on record, and a food that is only asked of.
    rule('the-gate-has-two-doors', '^src/safety/(?!(gate/|items\\.ts$|guidance\\.ts$))', '^src/safety/gate/'),
    rule(
      'storage-rows-by-the-gate',
      '^src/safety/(?!(gate/|storage\\.ts$))',
      '^src/safety/storage(-data)?\\.ts$',
    ),
    // What a power cut did to food: of what is on record by the ledger, of any other by the gate's door.
    rule(
      'power-by-the-gate',
      '^src/safety/(?!(items|power-now|guidance|index|power-cut)\\.ts$)',
      '^src/safety/power-cut\\.ts$',
    ),
    rule('sql-only-in-the-store', '^src/(?!store/)', 'node_modules/(kysely|better-sqlite3|pg)/'),
    rule('http-only-at-the-edge', '^src/(?!server/|web/|cli/)', 'node_modules/(fastify|@fastify|ws)/'),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default'] },
  },
};
