/** As much of a browser as signing in needs: it keeps cookies and says where its requests come from. Follows nothing. */
export const newBrowser = (address: string) => {
  const cookies = new Map<string, string>()
  const lines = new Map<string, string>()

  const send = async (path: string, init: RequestInit & { headers?: Record<string, string> }): Promise<Response> => {
    const cookie = [...cookies].map(([name, value]) => `${name}=${value}`).join('; ')
    const answer = await fetch(`${address}${path}`, { ...init, redirect: 'manual', headers: { cookie, ...init.headers } })
    for (const line of answer.headers.getSetCookie()) {
      const [pair = ''] = line.split(';')
      const name = pair.slice(0, pair.indexOf('='))
      const value = pair.slice(pair.indexOf('=') + 1)
      if (value === '') cookies.delete(name)
      else cookies.set(name, value)
      lines.set(name, line)
    }
    return answer
  }

  const post = (path: string, form: Record<string, string>, headers: Readonly<Record<string, string>> = {}) =>
    send(path, { method: 'POST', body: new URLSearchParams(form), headers: { origin: address, ...headers } })

  return {
    cookies: cookies as ReadonlyMap<string, string>,
    /** The whole line that set a cookie. */
    setBy: (name: string): string => lines.get(name) ?? '',
    get: (path: string) => send(path, {}),
    post,
    send,
    /** By next-auth's own way, as its client does; gives its error, null when all is well. */
    signIn: async ({ email, password }: { readonly email: string; readonly password: string }): Promise<string | null> => {
      const { csrfToken } = (await (await send('/api/auth/csrf', {})).json()) as { csrfToken: string }
      const answer = await post('/api/auth/callback/credentials', { email, password, csrfToken, json: 'true' })
      const { url } = (await answer.json()) as { url: string }
      return new URL(url, address).searchParams.get('error')
    },
  }
}
