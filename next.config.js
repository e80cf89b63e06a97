/** @type {import('next').NextConfig} */
export default {
  poweredByHeader: false,
  reactStrictMode: true,
  // Security headers are set by server/web/security-headers.ts, which knows each request's nonce.
  serverExternalPackages: ['@node-rs/argon2', 'libsql', 'yjs', 'y-protocols', 'y-websocket', 'lib0'],
}
