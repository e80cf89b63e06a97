import { permanentRedirect } from 'next/navigation'

/** Where the cooks were before they shared a screen with the kitchens: links that people keep still lead there. */
export default async function Page({ params }: { readonly params: Promise<{ readonly id: string }> }) {
  const { id } = await params
  permanentRedirect(`/evenings/${encodeURIComponent(id)}/kitchens`)
}
