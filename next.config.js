/** @type {import('next').NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  // A link's address is a secret: not even the development server writes it down.
  logging: { incomingRequests: { ignore: [/^\/(reply|join)\//] } },
  // Types are a stage of their own in npm test; npm start need not wait for them.
  typescript: { ignoreBuildErrors: true },
  // Security headers are set by server/web/security-headers.ts, which knows each request's nonce.
  // The plan's connection has it for pages that talk to each other past the server, which these do not.
  turbopack: { resolveAlias: { 'lib0/broadcastchannel': { browser: './app/_sync/no-broadcast.ts' } } },
  serverExternalPackages: ['@node-rs/argon2', 'libsql', 'yjs', 'y-protocols', 'y-websocket', 'lib0'],
}
