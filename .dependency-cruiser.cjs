/** Imports run downward only: each package may use those that stand before it, never one behind it. */
const order = ['science', 'chain', 'drawing', 'plant', 'bar', 'line', 'day', 'paper', 'store'];
const allowed = {
  science: [],
  chain: [],
  plant: ['science'],
  bar: ['science', 'chain', 'plant'],
  line: ['science', 'chain', 'drawing', 'plant', 'bar'],
  day: ['science', 'chain', 'plant', 'line'],
  drawing: [],
  paper: ['science', 'chain', 'plant', 'bar', 'line', 'drawing'],
  store: [],
};
const apps = {
  server: ['science', 'chain', 'plant', 'bar', 'line', 'drawing', 'paper', 'store'],
  web: ['science', 'chain', 'plant', 'bar', 'line', 'day', 'drawing'],
  cli: ['science', 'chain', 'plant', 'bar', 'line', 'day', 'drawing', 'paper', 'server'],
};
const rule = (name, from, allowedNames) => ({
  name,
  severity: 'error',
  comment: 'Imports run downward only (docs/decisions).',
  from: { path: from },
  to: {
    path: '^(packages|apps)/',
    pathNot: [
      from,
      `^(packages|apps)/${name.replace('downward-', '')}/package.json$`,
      ...allowedNames.map((other) => (other === 'server' ? '^apps/server/' : `^packages/${other}/`)),
    ],
  },
});
module.exports = {
  forbidden: [
    { name: 'no-circular', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    ...order.map((name) => rule(`downward-${name}`, `^packages/${name}/src`, allowed[name])),
    ...Object.entries(apps).map(([name, below]) => rule(`downward-${name}`, `^apps/${name}/src`, below)),
    {
      name: 'engine-does-no-io',
      severity: 'error',
      comment: 'The engine runs in a browser worker too.',
      from: { path: '^packages/(science|chain|bar|line|day|drawing)/src' },
      to: { dependencyTypes: ['core'] },
    },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|node_modules)/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'],
    },
  },
};
