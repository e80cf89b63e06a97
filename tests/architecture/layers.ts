/** A layer: the folder it is, the layers it may import and the packages it may use. The first that fits a file is its layer. */
export interface Layer {
  readonly name: string
  readonly holds: RegExp
  readonly layers: readonly string[]
  readonly packages: readonly RegExp[]
}

const zod = /^zod(\/mini|\/v4\/locales)?$/
const yjs = /^(yjs|lib0\/.+|y-protocols\/.+)$/
const node = /^node:/

export const LAYERS: readonly Layer[] = [
  { name: 'domain', holds: /^lib\/domain\//, layers: ['domain'], packages: [zod] },
  { name: 'contract', holds: /^lib\/scheduling\/(problem|schedule)\.ts$/, layers: ['contract'], packages: [] },
  // The referee shares nothing with the engine but the two files that say what a problem and a schedule are.
  { name: 'verify', holds: /^lib\/scheduling\/verify\//, layers: ['verify', 'contract'], packages: [] },
  { name: 'scheduling', holds: /^lib\/scheduling\//, layers: ['scheduling', 'contract'], packages: [] },
  {
    name: 'order',
    holds: /^lib\/order\//,
    layers: ['order', 'domain', 'scheduling', 'verify', 'contract'],
    packages: [/^lib0\//, zod],
  },
  { name: 'quantities', holds: /^lib\/quantities\//, layers: ['quantities', 'domain'], packages: [/^fraction\.js$/] },
  {
    name: 'recipes',
    holds: /^lib\/recipes\//,
    layers: ['recipes', 'domain'],
    packages: [/^(fraction\.js|numeric-quantity|parse-ingredient|htmlparser2)$/],
  },
  { name: 'table', holds: /^lib\/table\//, layers: ['table', 'domain'], packages: [] },
  { name: 'shopping', holds: /^lib\/shopping\//, layers: ['shopping', 'domain'], packages: [/^fraction\.js$/] },
  { name: 'drinks', holds: /^lib\/drinks\//, layers: ['drinks', 'domain'], packages: [] },
  { name: 'safety', holds: /^lib\/safety\//, layers: ['safety', 'domain'], packages: [] },
  { name: 'potluck', holds: /^lib\/potluck\//, layers: ['potluck', 'domain'], packages: [] },
  { name: 'sharing', holds: /^lib\/sharing\//, layers: ['sharing', 'domain'], packages: [] },
  { name: 'learning', holds: /^lib\/learning\//, layers: ['learning', 'domain'], packages: [zod] },
  { name: 'night', holds: /^lib\/night\//, layers: ['night', 'domain'], packages: [] },
  { name: 'plan', holds: /^lib\/plan\//, layers: ['plan', 'domain'], packages: [zod, yjs, /^fractional-indexing$/] },
  { name: 'prisma', holds: /^prisma\//, layers: ['prisma', 'domain'], packages: [node, /^@prisma\//, /^prisma(\/|$)/] },
  {
    name: 'server',
    holds: /^server\//,
    layers: ['server', 'prisma', 'domain', 'plan', 'night', 'learning', 'order', 'scheduling', 'verify', 'contract'],
    packages: [
      node,
      zod,
      yjs,
      /^(ws|next|next\/.+|next-auth|next-auth\/.+|react)$/,
      /^@prisma\//,
      /^@?libsql(\/.+)?$/,
      /^@node-rs\/argon2$/,
      /^(rate-limiter-flexible|undici|ipaddr\.js|nodemailer|sirv|web-push)$/,
      /^csv-stringify(\/sync)?$/,
      /^esbuild$/,
    ],
  },
  {
    name: 'local-order',
    holds: /^app\/_sync\/(local-order|order-worker|hash-worker|when-idle)\.ts$/,
    layers: ['local-order', 'app', 'domain', 'order', 'scheduling', 'contract'],
    packages: [],
  },
  // The service worker has no plan and no page: words alone.
  { name: 'worker', holds: /^app\/(_worker\/|_words\/away\.ts$)/, layers: ['worker'], packages: [/^serwist$/] },
  {
    name: 'app',
    holds: /^app\//,
    layers: [
      'app',
      'local-order',
      'worker',
      'domain',
      'plan',
      'quantities',
      'recipes',
      'table',
      'drinks',
      'shopping',
      'safety',
      'potluck',
      'sharing',
      'night',
      'learning',
      'server',
    ],
    packages: [
      zod,
      yjs,
      /^(react|react-dom|next|next-auth|next\/.+|next-auth\/.+|react\/.+|react-dom\/.+)$/,
      /^y-(websocket|indexeddb)$/,
      /^@fontsource-variable\//,
      /^uqr$/,
    ],
  },
]
