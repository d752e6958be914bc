/**
 * The arrows between the folders, extension -> (protocol) -> server -> language -> shared, for dependency-cruiser.
 *
 * Test files are exempt, because a test may look at everything. `npm run arrows` fails on any finding.
 */

const protocol = '^server/src/protocol([.]ts$|/)';
const testFiles = '[.]test[.]ts$';
const protocolLibraries = 'node_modules/vscode-(languageserver|languageclient|jsonrpc)[^/]*/';

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    {
      name: 'shared-is-pure',
      comment: 'The engine runs in Node, a worker and a browser alike: no parser, no editor, no files, no clock.',
      severity: 'error',
      from: { path: '^shared/', pathNot: testFiles },
      to: { pathNot: '^shared/|node_modules/(@types/)?d3-scale/' },
    },
    {
      name: 'plots-alone-use-d3',
      comment: 'The engine computes by itself; only pictures are made with the help of a library.',
      severity: 'error',
      from: { path: '^shared/', pathNot: ['^shared/src/plot/', testFiles] },
      to: { path: 'node_modules/' },
    },
    {
      name: 'language-knows-shared-alone',
      comment: 'The language is used by several programs and knows none of them.',
      severity: 'error',
      from: { path: '^language/', pathNot: testFiles },
      to: { path: '^(server|extension|test)/' },
    },
    {
      name: 'language-touches-no-files',
      comment: 'Programs read files and hand the text over, so that the language runs in a browser too.',
      severity: 'error',
      from: { path: '^language/src/', pathNot: testFiles },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'protocol-only-where-spoken',
      comment: 'Types of the Language Server Protocol appear in the editor services and the programs alone.',
      severity: 'error',
      from: { path: '^language/src/', pathNot: ['^language/src/services/', '^language/src/generated/', testFiles] },
      to: { path: `${protocolLibraries}|^vscode-(languageserver|languageclient|jsonrpc)` },
    },
    {
      name: 'server-knows-no-editor',
      comment: 'The server serves any editor.',
      severity: 'error',
      from: { path: '^server/', pathNot: testFiles },
      to: { path: '^(extension|test)/|^vscode$|node_modules/(@types/vscode|vscode-languageclient)/' },
    },
    {
      name: 'extension-speaks-protocol',
      comment: 'The extension asks the server; what the two say to each other is all that it may see of it, as types.',
      severity: 'error',
      from: { path: '^extension/', pathNot: testFiles },
      to: { path: '^(server|language|shared|test)/', pathNot: protocol },
    },
    {
      name: 'protocol-as-types-only',
      comment: 'A value imported from the protocol would be a copy of server code in the bundle of the extension.',
      severity: 'error',
      from: { path: '^extension/', pathNot: testFiles },
      to: { path: protocol, dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'protocol-stands-alone',
      comment: 'The protocol is shared with the extension, so it imports nothing but its own parts.',
      severity: 'error',
      from: { path: protocol },
      to: { pathNot: protocol },
    },
    {
      name: 'no-cycles',
      comment: 'Files that need each other cannot be read, tested or moved alone. Types may refer to each other.',
      severity: 'error',
      from: { pathNot: testFiles },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'no-unresolved',
      comment: 'An import that is not found is not checked by any other rule.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^vscode$' },
    },
    {
      name: 'declared-dependencies',
      comment: 'A package that is only there because another brought it can vanish with any update.',
      severity: 'error',
      from: { pathNot: testFiles },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'], pathNot: '^vscode$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: '.config/tsconfig.json' },
    combinedDependencies: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['types', 'import', 'node', 'default'] },
  },
};
