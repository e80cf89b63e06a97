/** @type {import('next').NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  // A link's address is a secret: not even the development server writes it down.
  logging: { incomingRequests: { ignore: [/^\/(reply|join)\//] } },
  // Types are a stage of their own in npm test; npm start need not wait for them.
  typescript: { ignoreBuildErrors: true },
  // Security headers are set by server/web/security-headers.ts, which knows each request's nonce.
  serverExternalPackages: ['@node-rs/argon2', 'libsql', 'yjs', 'y-protocols', 'y-websocket', 'lib0'],
}
