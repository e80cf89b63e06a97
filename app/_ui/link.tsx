import NextLink from 'next/link'
import type { ComponentProps } from 'react'

type Props = Omit<ComponentProps<typeof NextLink>, 'prefetch'>

/**
 * A way to another screen, fetched when it is taken: every screen is of its own moment, and what came ahead of the tap would be asked for
 * again.
 */
export function Link(props: Props) {
  return <NextLink {...props} prefetch={false} />
}
