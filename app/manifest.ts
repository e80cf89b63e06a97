import type { MetadataRoute } from 'next'

/** How Tableward stands on a home screen: there it has its own window, and on some phones only there it may call. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/',
    name: 'Tableward',
    short_name: 'Tableward',
    description: 'Plan a dinner of several courses, and spend it at the table.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: '#f1e8dc',
    theme_color: '#241023',
    icons: [
      { src: '/icons/192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
      { src: '/icons/512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: '/icons/512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/mark.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    ],
  }
}
